import { Injectable } from '@nestjs/common';
import { badInput } from '../../http/input.js';
import { refuseStale } from '../../http/version.js';
import { Ledger } from '../../ledger/ledger.service.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import {
  checkReminderRule,
  DEFAULT_REMINDER_RULE,
  toReminderRule,
  type ReminderRule,
} from '../../rules/reminders/reminder-rule.js';
import { Reads } from '../../storage/reads.js';
import { findStore, findStores } from '../../stores/find-store.js';
import { ruleProblem } from '../../web/sentences/rule-problem.js';
import { ReminderRuleEntity } from './reminder-rule.entity.js';
import type { ChangeReminderRuleDto } from './reminder-rules.dto.js';

/** A store's rule as it stands; version 0 is that of the defaults, which nobody has changed yet. */
export type StoreReminderRule = ReminderRule & { readonly version: number };

/** When each store works, and how early it wants to hear of what falls due. */
@Injectable()
export class ReminderRules {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
  ) {}

  /** The rule of every store. */
  async all(): Promise<ReadonlyMap<number, StoreReminderRule>> {
    const { manager } = this.reads;
    const rows = new Map((await manager.find(ReminderRuleEntity)).map((row) => [row.storeId, row]));
    const stores = await findStores(manager);
    return new Map(stores.map(({ id }) => [id, asRule(rows.get(id))]));
  }

  /** @throws Problem `not_found` of an unknown store. */
  async of(storeId: number): Promise<StoreReminderRule> {
    const rule = (await this.all()).get(storeId);
    if (!rule) throw noSuchStore(storeId);
    return rule;
  }

  /**
   * Changes the rule of a store. What is left out of the input stays as it is.
   * @throws Problem `not_found`, `changed_meanwhile`, `bad_input` that says in words what does not hold.
   */
  change(
    actor: Actor,
    storeId: number,
    { version, input }: { version: number; input: ChangeReminderRuleDto },
  ): Promise<StoreReminderRule> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('store', [storeId]);
      const store = await findStore(change.manager, storeId);
      if (!store) throw noSuchStore(storeId);
      const row = await change.manager.findOneBy(ReminderRuleEntity, { storeId });
      const now = asRule(row ?? undefined);
      refuseStale(`When ${store.name} is reminded`, { read: version, now: now.version });
      const rule = checked(now, input);
      const set = {
        workDays: [...rule.workDays],
        holidays: [...rule.holidays],
        leadDays: [...rule.leadDays],
        digestTime: rule.digestTime,
        version: now.version + 1,
      };
      if (row) await change.manager.update(ReminderRuleEntity, { storeId }, set);
      else await change.manager.insert(ReminderRuleEntity, { storeId, ...set });
      const { version: _version, ...detail } = set;
      change.note({ action: 'store.remindersChanged', subjectKind: 'store', subjectId: storeId, detail });
      return { ...rule, version: set.version };
    });
  }
}

function asRule(row: ReminderRuleEntity | undefined): StoreReminderRule {
  if (!row) return { ...DEFAULT_REMINDER_RULE, version: 0 };
  const { workDays, holidays, leadDays, digestTime, version } = row;
  return { ...toReminderRule({ workDays, holidays, leadDays, digestTime }), version };
}

/** The rule after the change, its lists in their order. */
function checked(now: ReminderRule, input: ChangeReminderRuleDto): ReminderRule {
  const {
    workDays = now.workDays,
    holidays = now.holidays,
    leadDays = now.leadDays,
    digestTime = now.digestTime,
  } = input;
  const written = {
    workDays: [...workDays].sort((a, b) => a - b),
    holidays: [...holidays].sort(),
    leadDays: [...leadDays].sort((a, b) => b - a),
    digestTime,
  };
  const problems = checkReminderRule(written);
  if (problems.length > 0) throw badInput(problems.map((code) => ruleProblem(code, written)));
  return toReminderRule(written);
}

function noSuchStore(id: number): Problem {
  return new Problem('not_found', `There is no store with the number ${id}.`);
}
