/* Runs only in browsers without modules: shows the plain notice at once. Written in old syntax on purpose. */
document.documentElement.setAttribute('data-old', '');
