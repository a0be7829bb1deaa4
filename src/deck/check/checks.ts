/** All checks of sense, in one list: each takes the sound parts and yields what it finds. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { checkBands } from './bands.ts';
import { checkCharts } from './charts.ts';
import { checkControls } from './controls.ts';
import { checkCues } from './cues.ts';
import { checkFlying } from './flying.ts';
import { checkGates } from './gates.ts';
import { checkIds } from './ids.ts';
import { checkNotes } from './notes.ts';
import { checkPasses } from './pass.ts';
import { checkPhases } from './phases.ts';
import { checkPlates } from './plates.ts';
import { checkQuantities } from './quantities.ts';
import { checkReferences } from './references.ts';
import { checkSteps } from './steps.ts';
import { checkTables } from './tables.ts';
import { checkUnused } from './unused.ts';
import { checkWind } from './wind.ts';
import { checkWorked } from './worked.ts';

export const checks: readonly ((parts: DeckParts) => Iterable<Draft>)[] = [
  checkIds,
  checkReferences,
  checkQuantities,
  checkWind,
  checkCharts,
  checkBands,
  checkSteps,
  checkCues,
  checkGates,
  checkFlying,
  checkControls,
  checkPhases,
  checkPasses,
  checkTables,
  checkPlates,
  checkNotes,
  checkWorked,
  checkUnused,
];
