/** Every rule, in the order in which findings are best read. To add one, write it in its family's file and list it here. */
import * as rings from './names/ring-rules.js';
import { ACCEPTANCE_WITHOUT_REASON, acceptanceOfUnknownCode, STALE_ACCEPTANCE } from './acceptance.js';
import * as asBuilt from './builds/as-built.js';
import * as cautions from './cautions/caution-rules.js';
import * as changes from './changes/change-rules.js';
import * as counting from './changes/counting-rules.js';
import * as expectations from './changes/expectation-rules.js';
import { HYGROMETER_OFF } from './builds/hygrometers.js';
import * as holds from './changes/hold-rules.js';
import * as kinds from './values/kinds-of-value.js';
import { BRIDGE_OFF_THE_SCALE } from './layout/bridge-place.js';
import { BRIDGE_PLATE_UNDER_BRACE } from './layout/bridge-plate.js';
import { CUTAWAY_INTO_NECK } from './layout/cutaway.js';
import { OFF_THE_PLATE } from './layout/off-the-plate.js';
import { OUTLINE_DISAGREES } from './layout/outline-disagrees.js';
import { OVER_THE_HOLE } from './layout/over-the-hole.js';
import { TOO_MANY_PARTS } from './layout/too-many-parts.js';
import { SOLVED_OTHERWISE } from './layout/solved-otherwise.js';
import { SIZES_DISAGREE } from './layout/sizes-disagree.js';
import * as modes from './values/plate-modes.js';
import * as members from './changes/member-rules.js';
import * as names from './names/name-rules.js';
import * as parents from './changes/parent-rules.js';
import * as paths from './names/path-rules.js';
import * as plausible from './values/plausible-values.js';
import { ODD_READING_RULE } from './builds/odd-reading-rule.js';
import * as readings from './builds/reading-rules.js';
import * as requests from './builds/request-rules.js';
import type { Rule } from './rule.js';
import { SET_TWICE } from './names/set-twice.js';
import { PROBLEM_RULES } from './text/text-rules.js';
import { UNKNOWN_PART } from './names/unknown-part.js';
import * as units from './values/unit-rules.js';
import * as unknowns from './values/unknowns.js';
import { VALUE_ON_PART } from './names/value-on-part.js';
import * as variables from './changes/variables.js';
import { WOLF_NOTE } from './voice/wolf-rules.js';
import * as woods from './values/wood-sense.js';

export { STALE_ACCEPTANCE } from './acceptance.js';
export { PROBLEM_RULES } from './text/text-rules.js';

export const RULES: readonly Rule[] = [
  names.DUPLICATE_NAME,
  names.UNKNOWN_NAME,
  names.WRONG_KIND,
  UNKNOWN_PART,
  names.SEVERAL_SHOPS,
  parents.NO_PARENT,
  parents.MISSING_PARENT,
  parents.PARENT_RING,
  rings.LINE_TOO_LONG,
  rings.NAME_RING,
  parents.BUILD_OF_UNKNOWN,
  paths.UNKNOWN_PATH,
  VALUE_ON_PART,
  paths.MISPLACED,
  paths.DERIVED_SET,
  paths.DERIVED_BY,
  paths.CHANGE_OUT_OF_PLACE,
  SET_TWICE,
  paths.SYNONYM,
  units.MISSING_UNIT,
  units.FRACTION_NEEDS_UNIT,
  units.WRONG_DIMENSION,
  units.MIL_IS_NOT_MM,
  kinds.WRONG_KIND_OF_VALUE,
  kinds.UNKNOWN_CHOICE,
  kinds.PITCH_AS_FREQUENCY,
  kinds.AMBIGUOUS_DATE,
  plausible.NEGATIVE_SIZE,
  plausible.IMPLAUSIBLE,
  woods.IMPOSSIBLE_WOOD,
  modes.NO_SUCH_MODE,
  modes.TAPS_DISAGREE,
  woods.HUMIDITY_AND_MOISTURE,
  woods.DEFLECTION_WITHOUT_RIG,
  HYGROMETER_OFF,
  OFF_THE_PLATE,
  OVER_THE_HOLE,
  BRIDGE_OFF_THE_SCALE,
  BRIDGE_PLATE_UNDER_BRACE,
  CUTAWAY_INTO_NECK,
  TOO_MANY_PARTS,
  SIZES_DISAGREE,
  OUTLINE_DISAGREES,
  changes.STALE_CHANGE,
  changes.SILENT_OVERRIDE,
  changes.CHANGE_OF_NOTHING,
  changes.STEP_WITHOUT_BASE,
  members.ADD_EXISTING,
  members.DROP_MISSING,
  changes.NO_CHANGE,
  changes.CHANGE_MISSING_OLD,
  members.EMPTY_TOGETHER,
  members.NO_REASON,
  counting.TOO_MANY_CHANGES,
  variables.COUNTED_AFTER_ALL,
  variables.SUBSTITUTION,
  variables.OTHER_WOOD,
  counting.UNBUILT_PARENT,
  variables.TOO_SMALL_TO_TELL,
  counting.ALLOWANCE_WITHOUT_REASON,
  counting.ALLOWANCE_UNUSED,
  holds.HOLD_OUT_OF_REACH,
  holds.HOLD_LOOP,
  holds.HOLD_NO_EFFECT,
  holds.HOLD_UNKNOWN,
  holds.HOLD_NOT_POSSIBLE,
  holds.HOLD_WITHOUT_BY,
  holds.HOLD_CLOSER_THAN_KNOWN,
  expectations.EXPECTATION_MISSED,
  expectations.EXPECTATION_UNKNOWN,
  expectations.EXPECTATION_NOT_A_QUANTITY,
  WOLF_NOTE,
  SOLVED_OTHERWISE,
  unknowns.NOT_COMPUTABLE,
  unknowns.MISSING_INPUT,
  unknowns.HANDBOOK_FIGURE,
  asBuilt.AS_BUILT_DIFFERS,
  asBuilt.MEASURED_DIFFERS,
  ODD_READING_RULE,
  readings.NOT_DISTINGUISHABLE,
  readings.READINGS_NOT_COMPARABLE,
  readings.UNDECLARED_CHANGE,
  requests.REQUEST_TOO_LATE,
  requests.REQUEST_COSTLY,
  requests.REQUEST_BREAKS_TRIAL,
  cautions.SENSITISED,
  cautions.DUST_CAUTION,
  cautions.TRADE_CAUTION,
  cautions.MATERIAL_CAUTION,
  cautions.DESIGN_AID,
  ACCEPTANCE_WITHOUT_REASON,
  acceptanceOfUnknownCode(() => CODES),
];

/** Every code a finding can have. */
export const CODES: readonly string[] = [
  ...Object.keys(PROBLEM_RULES),
  ...RULES.map((rule) => rule.code),
  STALE_ACCEPTANCE.code,
];
