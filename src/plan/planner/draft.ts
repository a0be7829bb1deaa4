/** A plan in the making: what each card does, and how full the sessions are. */
import type { PlanInput } from '../types.ts';
import { cardPlan, type CardPlan, type Choosing } from './course.ts';
import { putOn, takeOff } from './prices.ts';
import { NEVER } from './value-table.ts';

/** Rounding of sums must not make a full session overfull. */
const TINY = 1e-9;

export class Draft {
  readonly input: PlanInput;
  readonly plans: CardPlan[];
  /** Expected seconds by session, and seconds there are. */
  readonly load: Float64Array;
  readonly room: Float64Array;

  constructor(input: PlanInput, room: Float64Array) {
    this.input = input;
    this.room = room;
    this.load = new Float64Array(room.length);
    this.plans = input.cards.map((card) => cardPlan(input, card, untouched));
  }

  planFor(card: number, choosing: Choosing): CardPlan {
    return cardPlan(this.input, this.input.cards[card]!, choosing);
  }

  set(card: number, plan: CardPlan): void {
    takeOff(this.load, this.plans[card]!.usedSeconds);
    putOn(this.load, plan.usedSeconds);
    this.plans[card] = plan;
  }

  worth(card: number, plan = this.plans[card]!): number {
    return this.input.cards[card]!.weight * plan.atEvent;
  }

  /** The weighted sum of chances at the event. */
  value(): number {
    return this.plans.reduce((sum, plan, card) => sum + this.worth(card, plan), 0);
  }

  isOverfull(session: number): boolean {
    return this.load[session]! > this.room[session]! * (1 + TINY);
  }

  isFeasible(): boolean {
    return this.room.every((_, session) => !this.isOverfull(session));
  }

  /** Whether a card may change to another plan without making any session overfull, or more so than it is. */
  fits(card: number, plan: CardPlan): boolean {
    const now = this.plans[card]!.usedSeconds;
    return plan.usedSeconds.every((seconds, k) => {
      const more = seconds - now[k]!;
      return more <= 0 || this.load[k]! + more <= this.room[k]!;
    });
  }
}

/** Nothing is done with a card. */
export const untouched: Choosing = { first: NEVER, next: () => NEVER };
