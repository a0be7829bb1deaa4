/**
 * The authored form of a deck: one zod definition from which the TypeScript types, the loader's
 * checks and the published JSON Schema are all made. Structure only; what can't be said as a shape
 * (ids that must exist, bands that must nest, units that must be known) is checked in `check/`.
 *
 * `zod/mini` because this module reaches the browser bundle.
 */
import * as z from 'zod/mini';
import { unitIds } from './units.ts';

// The page's policy forbids code generation.
z.config({ jitless: true });

/** Documents a schema so that text editors show the words while the author types. */
function about<T extends z.core.$ZodType>(description: string, schema: T): T {
  z.globalRegistry.add(schema, { description });
  return schema;
}

export const idPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
const id = () => z.string().check(z.regex(idPattern), z.maxLength(60));
const words = (max = 400) => z.string().check(z.minLength(1), z.maxLength(max));
/**
 * YAML can spell NaN and infinities (`.nan`, `.inf`), which no number of the schema may be; the bounds
 * keep sums and differences of such numbers exact enough.
 */
const amount = () => z.number().check(z.minimum(-1e9), z.maximum(1e9));
const range = () => z.tuple([amount(), amount()]);
const condition = () => z.string().check(z.minLength(1), z.maxLength(200));

export const sourceSchema = z.strictObject({
  id: id(),
  title: words(),
  kind: about(
    'published: printed in the named document; common practice: a fact of the trade without a source; invented: made up for this deck.',
    z.enum(['published', 'common practice', 'invented']),
  ),
  edition: z.optional(words()),
  place: z.optional(about('Chapter, paragraph, page.', words())),
});

export const quantitySchema = z.strictObject({
  id: id(),
  label: words(60),
  spoken: z.optional(about('How it is named in a sentence: "sink".', words(60))),
  unit: z.enum(unitIds),
  range: about('Lowest and highest value that can occur at all, in the unit.', range()),
  step: about('The precision it is called in, in the unit.', amount()),
  above: z.optional(about('The word for an error above the target: "high", "fast".', words(30))),
  below: z.optional(about('The word for an error below the target: "low", "slow".', words(30))),
  words: z.optional(
    about(
      'Words for intervals, used in spoken cues. The intervals must not overlap.',
      z.array(z.strictObject({ when: condition(), say: words(60) })),
    ),
  ),
});

export const daySettingSchema = z.strictObject({ quantity: id(), default: amount() });

export const bandSchema = z.strictObject({
  target: amount(),
  desired: range(),
  adequate: range(),
  floor: z.optional(about('Never below this. Critical.', amount())),
  ceiling: z.optional(about('Never above this. Critical.', amount())),
  critical: z.optional(z.boolean()),
  because: z.optional(words()),
  source: z.optional(id()),
});

export const limitSchema = z.strictObject({
  floor: z.optional(amount()),
  ceiling: z.optional(amount()),
  because: z.optional(words()),
  source: z.optional(id()),
});

/** How a gate is recognised in a recorded flight. */
export const detectSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('falling'), quantity: id(), value: amount() }),
  z.strictObject({ kind: z.literal('rising'), quantity: id(), value: amount() }),
  z.strictObject({ kind: z.literal('distance'), ft: amount() }),
  z.strictObject({
    kind: z.literal('bearing'),
    relativeDeg: about('Bearing of the reference point relative to the nose; 90 or 270 is abeam.', amount()),
  }),
  z.strictObject({
    kind: z.literal('turned'),
    deg: about('Heading change since the gate before.', amount()),
  }),
]);

export const gateSchema = z.strictObject({
  id: id(),
  label: words(60),
  cue: about('What the pilot sees there.', words(200)),
  position: about(
    'Relative to the reference point, in feet along and to the right of the reference course, with the course flown there relative to it.',
    z.strictObject({ aheadFt: amount(), rightFt: amount(), courseDeg: amount() }),
  ),
  detect: z.optional(detectSchema),
  values: about('Band per quantity.', z.record(z.string(), bandSchema)),
});

export const checklistSchema = z.strictObject({
  id: id(),
  label: words(60),
  completeBy: about('The gate by which it must be complete.', id()),
  source: z.optional(id()),
  because: z.optional(words()),
  items: z
    .array(
      z.strictObject({
        id: id(),
        challenge: words(80),
        response: about('States the value, not "set" or "checked".', words(80)),
        critical: z.optional(z.boolean()),
        because: z.optional(words()),
      }),
    )
    .check(z.minLength(1)),
});

export const controlSchema = z.strictObject({
  id: id(),
  label: words(40),
  axis: z.optional(
    about(
      'Which arrow keys work it: vertical up and down, horizontal left and right.',
      z.enum(['vertical', 'horizontal']),
    ),
  ),
  actions: about(
    'From the lowest (or leftmost) to the highest (or rightmost) choice.',
    z
      .array(
        z.strictObject({
          id: id(),
          label: words(40),
          spoken: z.optional(about('As an instruction in a sentence: "nose up".', words(60))),
          neutral: z.optional(about('What is meant when nothing is called for.', z.boolean())),
          opposes: z.optional(about('The action of the same control that does the opposite.', id())),
          effects: z.optional(
            about(
              'What it adds to the rate of quantities: unit of the quantity per second.',
              z.record(z.string(), amount()),
            ),
          ),
        }),
      )
      .check(z.minLength(2)),
  ),
});

export const phaseSchema = z.strictObject({
  id: id(),
  label: words(60),
  from: id(),
  to: id(),
  cue: z.optional(about('Where the pilot is, for spoken cues: "Abeam the spot".', words(80))),
  windowS: about('Seconds within which the correction must be called.', amount()),
  state: about(
    'The quantities shown, in the order they are called, each with the range that can occur here.',
    z.record(z.string(), range()),
  ),
  controls: z.array(id()),
  rates: z.optional(
    about(
      'How quantities change by themselves, per second: a constant plus factors of other quantities of this phase.',
      z.record(
        z.string(),
        z.strictObject({
          constant: z.optional(amount()),
          factors: z.optional(z.record(z.string(), amount())),
        }),
      ),
    ),
  ),
  limits: z.optional(z.record(z.string(), limitSchema)),
});

export const ruleSchema = z.strictObject({
  id: id(),
  when: about(
    'Input -> FEEL numeric unary test; an input left out may have any value.',
    z.record(z.string(), condition()),
  ),
  then: about("An action of the table's control.", id()),
  because: words(),
  critical: z.optional(z.boolean()),
});

export const tableSchema = z.strictObject({
  id: id(),
  label: words(60),
  phases: z.array(id()).check(z.minLength(1)),
  control: id(),
  hit: about(
    'DMN hit policy. unique: rules never overlap; any: overlapping rules agree; first: the first that fits; priority: the one whose action comes first in `priority`.',
    z.enum(['unique', 'any', 'first', 'priority']),
  ),
  priority: z.optional(z.array(id())),
  overriding: z.optional(
    about(
      'Beats all other tables where one of its rules fits (go-around). Need not be complete.',
      z.boolean(),
    ),
  ),
  // The analysis looks at every combination of the inputs' edges.
  inputs: z.array(id()).check(z.minLength(1), z.maxLength(12)),
  source: z.optional(id()),
  rules: z.array(ruleSchema).check(z.minLength(1)),
});

const point = () => z.tuple([amount(), amount()]);
export const plateSchema = z.strictObject({
  id: id(),
  label: words(60),
  size: about('Width and height of the drawing, in the unit.', point()),
  unit: z.enum(['ft', 'm', 'nm']),
  source: z.optional(id()),
  reference: z.optional(
    about(
      "Where the deck's reference point lies on the drawing, and which way the reference course points there, in degrees clockwise from up. With it the plate's outlines are drawn on the circuit picture.",
      z.strictObject({ at: point(), courseDeg: amount() }),
    ),
  ),
  shapes: z.array(
    z.discriminatedUnion('shape', [
      z.strictObject({ shape: z.literal('outline'), points: z.array(point()).check(z.minLength(3)) }),
      z.strictObject({
        shape: z.literal('line'),
        points: z.array(point()).check(z.minLength(2)),
        dashed: z.optional(z.boolean()),
      }),
      z.strictObject({ shape: z.literal('circle'), at: point(), radius: amount() }),
      z.strictObject({ shape: z.literal('label'), at: point(), text: words(30) }),
    ]),
  ),
  spots: z.array(
    z.strictObject({
      id: id(),
      label: words(60),
      at: point(),
      desiredWithin: amount(),
      adequateWithin: amount(),
      critical: z.optional(z.boolean()),
      because: z.optional(words()),
    }),
  ),
});

export const noteSchema = z.strictObject({
  id: id(),
  ask: words(),
  answer: words(200),
  accept: z.optional(about('Other ways of typing the same answer.', z.array(words(200)))),
  choices: z.optional(about('Wrong answers; with them the note is asked as a choice.', z.array(words(200)))),
  gate: z.optional(id()),
  critical: z.optional(z.boolean()),
  because: z.optional(words()),
  source: z.optional(id()),
});

export const deckFormat = 'gatecall-deck/1';

export const deckSchema = z.strictObject({
  format: z.literal(deckFormat),
  id: id(),
  title: words(100),
  version: about(
    'Semantic version.',
    z.string().check(z.regex(/^(0|[1-9]\d*)\.(0|[1-9]\d*)\.(0|[1-9]\d*)$/)),
  ),
  language: about('BCP 47 language tag.', z.string().check(z.regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/))),
  summary: z.optional(words()),
  cautions: z.array(words(600)).check(z.minLength(1)),
  reference: about(
    'The point all positions are relative to, and the quantity that is the height over it.',
    z.strictObject({
      label: words(60),
      course: z.optional(
        about('What the reference course is: "ship\'s course", "runway heading".', words(60)),
      ),
      height: id(),
    }),
  ),
  defaultSource: id(),
  sources: z.array(sourceSchema).check(z.minLength(1)),
  quantities: z.array(quantitySchema).check(z.minLength(1)),
  day: z.optional(z.array(daySettingSchema)),
  gates: z.array(gateSchema).check(z.minLength(1)),
  checklists: z.optional(z.array(checklistSchema)),
  controls: z.optional(z.array(controlSchema)),
  phases: z.optional(z.array(phaseSchema)),
  tables: z.optional(z.array(tableSchema)),
  plates: z.optional(z.array(plateSchema)),
  notes: z.optional(z.array(noteSchema)),
});
