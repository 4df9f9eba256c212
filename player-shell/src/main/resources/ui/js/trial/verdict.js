/** What the findings mean, in words. Pure: numbers in, sentences out. */

const STUTTER = 0.04;
const STICK_FULL = 2.5e6;
const STICK_LIGHT = 1e6;
const ROOM = 500 * 1024 * 1024;

const share = (clip) => (clip && clip.frames > 0 ? clip.dropped / clip.frames : 1);
const plays = (clip) => Boolean(clip) && !clip.failed && clip.frames > 0 && share(clip) <= STUTTER;

function picture(name, clip) {
  if (!clip || clip.failed || clip.frames === 0) {
    return { what: name, found: 'did not play', means: 'this browser cannot show it', bad: true };
  }
  const lost = `${clip.dropped} of ${clip.frames} pictures dropped`;
  return plays(clip)
    ? { what: name, found: lost, means: 'plays smoothly' }
    : { what: name, found: lost, means: 'stutters', bad: true };
}

const megabytes = (bytes) => `${(bytes / 1e6).toLocaleString('en', { maximumFractionDigits: 1 })} MB a second`;

function stick(bytesPerSecond) {
  if (!bytesPerSecond) {
    return { what: 'Course stick', found: 'none is here', means: 'it can be tried when it has come' };
  }
  const means = bytesPerSecond >= STICK_FULL ? 'fast enough for every film'
    : bytesPerSecond >= STICK_LIGHT ? 'enough for the light copy' : 'too slow: copy the course to the laptop';
  return { what: 'Course stick', found: megabytes(bytesPerSecond), means, bad: bytesPerSecond < STICK_FULL };
}

const room = (free) => (free === undefined ? { what: 'Free space', found: 'the disk does not say', means: 'look into its properties' } : {
  what: 'Free space',
  found: `${(free / 1e9).toLocaleString('en', { maximumFractionDigits: 1 })} GB`,
  means: free >= ROOM ? 'enough to play from the stick' : 'make some room: notes need a little',
  bad: free < ROOM,
});

/** The rows of the table. */
export function findings(found) {
  return [
    picture('Full picture (1080 lines)', found.full),
    picture('Light picture (720 lines)', found.light),
    { what: 'Kinds of film', found: found.codecs.join(', ') || 'none', means: found.codecs.includes('H.264') ? 'the usual kind plays' : 'the usual kind does not play', bad: !found.codecs.includes('H.264') },
    stick(found.stickBytesPerSecond),
    room(found.freeBytes),
    { what: 'System', found: `${found.system}, Java ${found.java}`, means: 'for the help slip' },
  ];
}

/** One plain sentence: what to order. */
export function verdict(found) {
  if (plays(found.full)) {
    return { good: true, text: 'This laptop plays a course at full size.' };
  }
  if (plays(found.light)) {
    return { good: true, text: 'This laptop wants the light copy: ask for it when you order. Everything else is the same.' };
  }
  return { good: false, text: 'This laptop does not play films smoothly now. Close other programs, put it on its power supply and try again; or try another browser.' };
}
