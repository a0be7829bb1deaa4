/**
 * What a drill is made of: targets (what can be drilled), scenarios and twins (states drawn for them),
 * runs, levels of difficulty, misses, coverage, and the decision map.
 *
 * targets.ts     targetsOf(procedure): Targets; cardOf(target): CardId
 * scenario.ts    drawScenario(procedure, target, closeness, random): Scenario | null
 * twin.ts        drawTwin(procedure, target, random): Twin | null
 * clear-states.ts clearStatesOf(ground): ClearStates; hasRoom(procedure, target): boolean
 * plan.ts        composeRun(procedure, targets, weakness, length, random, closeness): Plan
 *                scenarioFor(procedure, item, closeness): Scenario
 * run-order.ts   nextInRun(items, asked, waits): PlanItem | null
 * difficulty.ts  ladder: readonly Difficulty[]; nextLevel(level, marks): number; sayLevel(level): string
 *                shownQuantities(procedure, scenario, level): string[]
 * miss.ts        missOf(procedure, scenario, assessment): MissKind | null; sayMiss(kind): string
 *                groupMisses(procedure, results): MissGroup[]; targetsOfMisses(results): RunTargets
 * coverage.ts    coverage(targets, facts): Coverage; factsIn(histories): DrillFact[]
 *                markOf(item, scenario): DrillMark; edgeMissesIn(facts), twinTimesIn(facts): for Weakness
 * recall-mark.ts markOfRecall(prompt, assessment): DrillMark | null
 * decision-map.ts decisionMap(procedure, phase, state, x, y): DecisionMap
 *                tellingInputs(procedure, phase, state): [x, y] | null
 */
import type { CardId } from '../cards/types.ts';
import type { Timeliness } from '../grading/types.ts';
import type { Decision, Interval, Performance, State } from '../rules/types.ts';

/**
 * How far a state is from where its decision would be another.
 * `wide`: every value well inside the stretch between two edges, for every table of the phase, as far as
 * the rule's region allows. `near`: one value within a few steps of an edge of the rule. `edge`: one
 * value at the last step before it.
 */
export type Closeness = 'wide' | 'near' | 'edge';

/** On which side of the state the other decision begins. */
export type Side = 'below' | 'above';

/** A rule, in one of its table's phases. */
export interface RuleTarget {
  readonly phase: string;
  readonly table: string;
  readonly rule: string;
}

/** An input that alone can change what is asked of the rule's control. */
export interface InputTarget extends RuleTarget {
  readonly quantity: string;
}

/** Where the rule's region ends along an input and another action begins. */
export interface EdgeTarget extends InputTarget {
  readonly side: Side;
}

/** Two states alike but for the input, one decided by the rule, with different required actions. */
export type TwinTarget = InputTarget;

/**
 * Why a rule decides no state of a phase that can be read off. `never-fits`: its conditions lie outside
 * what can occur. `always-beaten`: other rules decide wherever it fits. `between-steps`: it decides only
 * values between two steps.
 */
export type WhyUnreachable = 'never-fits' | 'always-beaten' | 'between-steps';

export interface Unreachable extends RuleTarget {
  readonly why: WhyUnreachable;
}

/** All there is to drill in a procedure, in the order of its phases, tables and rules. */
export interface Targets {
  readonly rules: readonly RuleTarget[];
  readonly inputs: readonly InputTarget[];
  readonly edges: readonly EdgeTarget[];
  readonly twins: readonly TwinTarget[];
  readonly unreachable: readonly Unreachable[];
}

/** What a run is to be made of. */
export interface RunTargets extends Pick<Targets, 'rules' | 'edges' | 'twins'> {
  /** Just these, each so often; without it as many of the weakest as the run is long. */
  readonly times?: number;
}

export interface ScenarioEdge {
  readonly quantity: string;
  /** Where the change lies, in the quantity's unit. */
  readonly at: number;
  /** Of the state's value from it, in the quantity's unit, >= 0. */
  readonly distance: number;
  readonly side: Side;
}

export interface Scenario {
  readonly phase: string;
  /** Every value a multiple of its quantity's step. */
  readonly state: State;
  /** The rule it was drawn for; it decides its control here. */
  readonly table: string;
  readonly rule: string;
  /** What was drawn: a region too thin for what was asked gives the nearest that it has. */
  readonly closeness: Closeness;
  /** The edge it was drawn at; null when it was drawn wide. */
  readonly edge: ScenarioEdge | null;
  readonly decision: Decision;
}

export interface Twin {
  readonly phase: string;
  readonly table: string;
  readonly rule: string;
  /** The one input in which they differ, by as few steps as the rule allows. */
  readonly quantity: string;
  /** Where between the two the decision changes. */
  readonly at: number;
  /** The rule decides here. */
  readonly state: State;
  /** And not here. */
  readonly other: State;
  readonly decision: Decision;
  readonly otherDecision: Decision;
}

/** What the record knows, as functions, so that no clock is inside. */
export interface Weakness {
  /** Chance of recall of a rule's card now, 0 to 1; null for one never answered. */
  recall(card: CardId): number | null;
  /** How often scenarios at this edge were missed, and not answered desired since. */
  edgeMisses(target: EdgeTarget): number;
  /** How often the twin pair was drilled. */
  twinTimes(target: TwinTarget): number;
  /** True when the pilot has answered any card of the gate. */
  met(gate: string): boolean;
}

interface PlanPart {
  readonly card: CardId;
  readonly phase: string;
  /** The pilot has never met the gate at which the phase begins: say so before asking. */
  readonly unmet: boolean;
  /** With the item and the level, all that is needed to draw its scenario. */
  readonly seed: number;
}

/** One question of a run, see `scenarioFor`. */
export type PlanItem =
  | (PlanPart & { readonly kind: 'rule'; readonly target: RuleTarget })
  | (PlanPart & { readonly kind: 'edge'; readonly target: EdgeTarget })
  | (PlanPart & {
      readonly kind: 'twin';
      readonly target: TwinTarget;
      /** The two items with the same number are one pair, and have the same seed. */
      readonly pair: number;
      /** The state in which the target's rule decides, or its twin. */
      readonly half: 'state' | 'other';
    });

export interface Plan {
  readonly items: readonly PlanItem[];
}

/** A step of the ladder of difficulty. */
export interface Difficulty {
  readonly closeness: Closeness;
  /** Of the deck's response window, before the pilot's own scaling. */
  readonly windowFactor: number;
  /** `needed`: only quantities without which the decision isn't fixed. `all`: every one of the phase. */
  readonly shown: 'needed' | 'all';
}

/** What moves the level. */
export interface Mark {
  readonly performance: Performance;
  readonly timeliness: Timeliness;
}

/** The direction of an error in answer to a scenario, gravest first. */
export type MissKind =
  | 'missed-go-around'
  | 'wrong-way'
  | 'needless-go-around'
  | 'no-answer'
  | 'wrong-control'
  | 'too-little'
  | 'too-much'
  | 'late';

/** A question of a run and how it was answered; `miss` as `missOf` gives it. */
export interface DrillResult {
  readonly item: PlanItem;
  readonly scenario: Scenario;
  readonly miss: MissKind | null;
}

/** What was missed at one gate in one way. */
export interface MissGroup {
  /** The gate at which the phase begins. */
  readonly gate: string;
  readonly kind: MissKind;
  readonly results: readonly DrillResult[];
}

/** What an answer event keeps of a scenario, of a drill or of Recall: where it stood. */
export interface DrillMark {
  readonly phase: string;
  readonly closeness: Closeness;
  /** The input at whose edge the state was drawn, and the side on which the other decision begins. */
  readonly edge?: string;
  readonly side?: Side;
  /** The state was one half of a twin pair that differs in `edge`. */
  readonly twin?: boolean;
}

/** One drilled scenario, as read from the record. */
export interface DrillFact extends DrillMark {
  readonly card: CardId;
  readonly desired: boolean;
}

export interface Covered {
  readonly drilled: number;
  readonly of: number;
}

export interface Coverage {
  readonly rules: Covered;
  readonly inputs: Covered;
  readonly twins: Covered;
}

/**
 * A rectangle of a decision map. Cells are disjoint and cover the map; an end that is open belongs to
 * the neighbour.
 */
export interface MapCell {
  readonly x: Interval;
  readonly y: Interval;
  /** Cells with the same number ask for the same. */
  readonly outcome: number;
}

export interface MapOutcome {
  readonly actions: Readonly<Record<string, string>>;
  readonly overriding: boolean;
  /** `table/rule` of every rule that is a reason somewhere in its cells. */
  readonly rules: readonly string[];
}

/** A slice through a phase's box: two inputs free, the others as in a state. */
export interface DecisionMap {
  readonly x: string;
  readonly y: string;
  readonly xRange: Interval;
  readonly yRange: Interval;
  readonly cells: readonly MapCell[];
  readonly outcomes: readonly MapOutcome[];
}
