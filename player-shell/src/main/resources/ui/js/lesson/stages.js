/**
 * What the hands do, told from the words of the moments: lay out, mix, paint, dry, fire.
 * A moment whose words say nothing stays in the stage before it.
 */

const STAGES = [
  { id: 'fire', title: 'fire', words: /\b(fir(e|es|ed|ing)|kilns?|soak|heat\w*|fus(e|es|ed|ing)|anneal\w*|bake\w*|cool\w*|lid)\b/i },
  { id: 'dry', title: 'dry', words: /\b(dry|dries|dried|drying|airing)\b/i },
  { id: 'mix', title: 'mix', words: /\b(mix\w*|stir\w*|grind\w*|mull\w*|medium)\b/i },
  { id: 'paint', title: 'paint', words: /\b(paint\w*|coats?|brush\w*|wash(es)?|outlines?|stroke\w*|pass(es)?|dab\w*)\b/i },
  { id: 'layout', title: 'lay out', words: /\b(lay|lays|laid|lay(ing)? out|plan\w*|order|sort\w*|cut\w*|clean\w*|weigh\w*|scale|template|place\w*|stack\w*|sheets?|dams?|subjects?)\b/i },
];

/** The stage of one moment, or null. What hangs on it counts before its words. */
export function stageOf(moment) {
  if (moment.target === 'firing') {
    return 'fire';
  }
  const found = STAGES.find((stage) => stage.words.test(moment.text));
  return found ? found.id : null;
}

export const stageTitle = (id) => (STAGES.find((stage) => stage.id === id) || { title: '' }).title;

/**
 * Bands over the whole duration, in seconds: `[{stage, from, to}]`, without gaps; neighbours of one
 * stage are one band. Before the first recognised moment the stage is "watch".
 */
export function bands(moments, duration) {
  const found = [];
  let stage = 'watch';
  let from = 0;
  moments.forEach((moment) => {
    const next = stageOf(moment) || stage;
    const at = Math.min(duration, moment.atMillis / 1000);
    if (next !== stage) {
      if (at > from) {
        found.push({ stage, from, to: at });
      }
      stage = next;
      from = at;
    }
  });
  found.push({ stage, from, to: duration });
  return found;
}
