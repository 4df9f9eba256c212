/** The server's HTML is already cleaned; the named policy lets exactly this place insert it. */
const policy = window.trustedTypes
  ? window.trustedTypes.createPolicy('markdown', { createHTML: (html) => html })
  : { createHTML: (html) => html };

/** Parses outside the page first, so that nothing in it can load or run before it is looked at. */
export function proseFrom(html) {
  const parsed = new DOMParser().parseFromString(policy.createHTML(html), 'text/html');
  parsed.querySelectorAll('script, style, iframe, object, embed, link, meta, form, base').forEach((node) => node.remove());
  parsed.querySelectorAll('*').forEach((node) => Array.from(node.attributes).forEach((attribute) => {
    if (attribute.name.startsWith('on') || attribute.name === 'style' || /^\s*javascript:/i.test(attribute.value)) {
      node.removeAttribute(attribute.name);
    }
  }));
  return Array.from(parsed.body.childNodes).map((node) => document.adoptNode(node));
}
