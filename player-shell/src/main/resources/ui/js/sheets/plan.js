/** The student's own version of a plan: format, number of sheets, pins. Millimetres throughout. */

/** Reads a plan file; JSON, which is YAML too. */
export function readPlan(text) {
  const plan = JSON.parse(text.replace(/^\uFEFF/, ''));
  if (!plan || !Array.isArray(plan.subjects)) {
    throw new Error('no subjects');
  }
  return plan;
}

/** The size a plan is drawn for: its sheet, or the box round all its shapes. */
export function planSize(plan) {
  const stated = plan.piece && plan.piece.sheet_mm;
  if (stated) {
    return { width: stated[0], height: stated[1] };
  }
  const points = plan.subjects.flatMap(shape);
  return { width: Math.max(10, ...points.map((p) => p[0])), height: Math.max(10, ...points.map((p) => p[1])) };
}

/** The corners of a subject. */
export function shape(subject) {
  if (subject.outline_mm) {
    const flat = subject.outline_mm;
    return Array.isArray(flat[0]) ? flat : flat.reduce((all, x, at) => (at % 2 ? all : [...all, [x, flat[at + 1]]]), []);
  }
  const box = subject.box_mm;
  return box ? [[box[0], box[1]], [box[2], box[1]], [box[2], box[3]], [box[0], box[3]]] : [];
}

/** As large as it can be with nothing lost, in the middle. */
function placed(plan, own) {
  const size = planSize(plan);
  const scale = Math.min(own.width / size.width, own.height / size.height);
  const left = (own.width - scale * size.width) / 2;
  const top = (own.height - scale * size.height) / 2;
  return ([x, y]) => [left + scale * x, top + scale * y];
}

/** The subjects in the student's format, with pins. */
export function subjects(plan, own, pins) {
  const move = placed(plan, own);
  return plan.subjects.map((subject) => {
    const { box_mm: box, outline_mm: outline, planned_on: kept, pin, ...rest } = subject;
    const corners = shape(subject).map(move);
    const changed = { ...rest };
    if (corners.length) {
      changed.outline_mm = corners;
    }
    const wanted = subject.name in pins ? pins[subject.name] : (own.sheets === plan.sheets ? pin : undefined);
    if (wanted) {
      changed.pin = wanted;
    }
    return changed;
  });
}

/** The sheets of the plan as it came: what the bench found for it, or what was saved with it. */
function sheetsOf(plan, teacher) {
  const saved = plan.subjects.map((one) => one.planned_on);
  return saved.every(Boolean) ? saved : teacher;
}

/** What the bench is asked: the plan as it came, merged or divided, or, once something is moved, a plan of one's own. */
export function request(plan, own, pins, teacher) {
  const list = subjects(plan, own, pins);
  const came = sheetsOf(plan, teacher);
  const whole = Object.keys(pins).length === 0 && came;
  return {
    ...plan,
    sheets: own.sheets,
    subjects: whole ? list.map((one, at) => ({ ...one, pin: undefined, planned_on: came[at] })) : list,
    piece: {
      ...(plan.piece || {}), sheet_mm: [own.width, own.height], thickness_mm: own.thickness,
      strip_mm: [own.stripThick, own.stripHigh],
      ...(own.shelfWidth && own.shelfDepth ? { shelf_mm: [own.shelfWidth, own.shelfDepth] } : {}),
    },
  };
}

/** The plan as it is shown: every subject on its sheet, what was moved by hand pinned. */
export function shownPlan({ plan, own, pins, answer }) {
  const asked = request(plan, own, pins, null);
  return { ...asked, subjects: asked.subjects.map((one, at) => ({ ...one, pin: pins[one.name], planned_on: answer.subjects[at].sheet })) };
}
