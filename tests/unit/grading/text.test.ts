import { describe, expect, it, test } from 'vitest';
import { gradeText } from '../../../src/grading/grade-text.ts';

const grade = (text: string, ...accept: string[]) =>
  gradeText({ form: 'text', accept }, { form: 'text', text });

describe('a typed answer', () => {
  test.each([
    ['nose up', 'Nose up'],
    ['  NOSE-UP! ', 'Nose up'],
    ['noseup', 'Nose up'],
    ['cote', 'Côté'],
    ['CÔTÉ', 'cote'],
    ['60ft', '60 ft'],
    ['60 ft.', '60 ft'],
    ['1900 lb or more', '1,900 lb or more'],
    ['1,5', '1.5'],
    ['\u22125 kt', '-5 kt'],
    ['?', '?'],
  ])('%j is the same as %j', (typed, accepted) => {
    expect(grade(typed, accepted)).toMatchObject({ performance: 'desired', headline: 'right' });
  });

  test.each([
    ['nose down', 'Nose up'],
    ['15', '1.5'],
    ['5', '-5'],
    ['-5', '5'],
    ['nose up now', 'Nose up'],
    ['?!', 'Nose up'],
    ['!', '?'],
  ])('%j is not %j', (typed, accepted) => {
    expect(grade(typed, accepted)).toMatchObject({ performance: 'outside', headline: 'not that' });
  });

  it('may be any of those accepted', () => {
    expect(grade('sixty feet', '60 ft', '60', 'Sixty feet')).toMatchObject({ performance: 'desired' });
  });

  it('must not be empty', () => {
    expect(grade(' \n', 'x')).toMatchObject({ ok: false, problem: { code: 'empty' } });
  });
});
