import type { Ground } from '../cards/card-kind.ts';
import type { Performance } from '../rules/types.ts';
import type { AnswerDetail, Unreadable } from './types.ts';

/** What the grader of one form of answer finds, before time comes into it. */
export interface FormGrade {
  readonly ok: true;
  readonly performance: Performance;
  readonly headline: string;
  readonly detail: AnswerDetail;
  /** An overriding action was missed: critical, whatever the card. */
  readonly criticalFault?: boolean;
  /** Where the form knows it better than the card does. */
  readonly expected?: string;
  readonly ground?: Ground;
}

export interface Unreadably {
  readonly ok: false;
  readonly problem: Unreadable;
}

export type FormResult = FormGrade | Unreadably;

export function unreadable(code: Unreadable['code'], message: string): Unreadably {
  return { ok: false, problem: { code, message } };
}

/** The ask of one form, and the answer to it. */
export type AskOf<F extends string, A extends { readonly form: string }> = Extract<A, { readonly form: F }>;
