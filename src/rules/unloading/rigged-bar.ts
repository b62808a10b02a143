import type { Exact } from '../quantities/exact.js';

/** A spreader bar as it is rigged: two equal top legs to the hook, made fast above the two drop slings. */
export interface RiggedBar {
  readonly handlingFactor: Exact;
  /** With the drop slings that hang on it. */
  readonly spreaderBarMassKg: Exact;
  readonly dropSpacingM: Exact;
  readonly topLegLengthM: Exact;
}

/** What unloading asks of the bar and its slings, in kg hung. */
export interface SpreaderBarNeed {
  /** Under the bar, without the bar's own mass. */
  readonly barLoadKg: Exact;
  readonly dropLoadKg: Exact;
  /** The tension in one top leg. */
  readonly topLegLoadKg: Exact;
  readonly barCompressionKg: Exact;
}
