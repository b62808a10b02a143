import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { badInput } from '../http/input.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import { fitness, type Verdict } from '../rules/fitness/fitness.js';
import { DUTIES, type Duty } from '../rules/gear/gear.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { StoresService } from '../stores/stores.service.js';
import { RegisterService } from './register.service.js';
import type { Standing } from './standings.service.js';

/** Asks the one question of an item by itself: is it fit for this duty, on these days? Ratings and sizes are a job's to ask. */
@Injectable()
export class FitnessService {
  constructor(
    private readonly register: RegisterService,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
  ) {}

  /**
   * The verdict for a duty (the kind's first when left out) and days (today when left out).
   * @throws Problem `not_found`, `bad_input` of days that run backwards.
   */
  async ask(
    itemId: number,
    { duty, from, to }: { duty?: Duty | undefined; from?: string | undefined; to?: string | undefined } = {},
  ): Promise<{ verdict: Verdict; duty: Duty; from: Day; to: Day; standing: Standing }> {
    const standing = await this.register.standing(itemId);
    const { gear, today } = standing;
    const store = await this.stores.get(gear.storeId);
    const kind = this.kindOf(gear.kind);
    const asked = duty ?? kind.duties[0] ?? DUTIES[0];
    const window = { from: from === undefined ? today : toDay(from), to: toDay(to ?? from ?? today) };
    if (window.to < window.from) throw badInput([{ field: 'to', message: 'is before the first day' }]);
    const line = {
      key: 'asked',
      label: kind.name,
      kind: gear.kind,
      duty: asked,
      quantity: 1,
      dimensions: [],
      workings: [],
    };
    const scheme = this.catalogue.scheme(store.scheme);
    return {
      verdict: fitness(gear, line, { kind, scheme, window, today }),
      duty: asked,
      ...window,
      standing,
    };
  }

  /** The definition of a kind; of one that the catalogue dropped, one that serves no duty. */
  kindOf(kind: string): KindDefinition {
    return this.catalogue.kinds().find((entry) => entry.kind === kind) ?? unknownKind(kind);
  }
}

/** A kind that the catalogue dropped serves no duty, so everything of it is refused. */
function unknownKind(kind: string): KindDefinition {
  return {
    kind,
    name: kind,
    plural: kind,
    tagPrefix: '',
    alsoCalled: [],
    duties: [],
    dimensions: [],
    checklist: [],
    cautions: [],
  };
}
