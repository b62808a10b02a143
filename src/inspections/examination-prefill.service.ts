import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import type { Actor } from '../people/actor.js';
import { markingText } from '../register/item-words.js';
import { RegisterService } from '../register/register.service.js';
import { addDays, type Day } from '../rules/calendar/day.js';
import { intervalMonths } from '../rules/due/interval.js';
import { lastInspection } from '../rules/due/last-inspection.js';
import type { Occasion } from '../rules/examination/report.js';
import type { Gear } from '../rules/gear/gear.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import { Reads } from '../storage/reads.js';
import { StoresService } from '../stores/stores.service.js';
import { MEASURE_NAMES } from '../web/sentences/words.js';
import { formOfExaminer, formOfReport, type ExaminationForm } from './examination-form.js';
import { ExaminationReports } from './examination-reports.service.js';
import { lastExamined } from './records-of-items.js';

/** Fills in what is on record already, so that an examiner writes only what they saw. */
@Injectable()
export class ExaminationPrefill {
  constructor(
    private readonly register: RegisterService,
    private readonly stores: StoresService,
    private readonly reports: ExaminationReports,
    private readonly catalogue: Catalogue,
    private readonly reads: Reads,
  ) {}

  /** The form for an item; for a correction, the particulars of the report to be corrected. @throws Problem `not_found`. */
  async formFor(actor: Actor, itemId: number, supersedesId: number | undefined): Promise<ExaminationForm> {
    const item = await this.register.get(itemId);
    const { gear, today } = await this.register.standing(itemId);
    const store = await this.stores.get(item.storeId);
    const earlier = supersedesId === undefined ? undefined : await this.reports.particularsOf(supersedesId);
    if (supersedesId !== undefined && earlier) return formOfReport(earlier, supersedesId);
    const last = await this.reports.lastSignedBy(actor);
    return {
      ...(supersedesId === undefined ? {} : { supersedesId: String(supersedesId) }),
      employerName: last?.employerName ?? '',
      employerAddress: last?.employerAddress ?? '',
      premisesAddress: `${store.name}, ${store.address}`,
      identification: [
        `${this.kindName(item.kind)} ${item.tag}`,
        `maker ${item.maker}`,
        item.serial === null ? 'serial number not known' : `serial number ${item.serial}`,
      ].join(', '),
      ...(item.manufacturedOn === null
        ? { manufactureUnknown: 'true' }
        : { manufacturedOn: item.manufacturedOn }),
      ...(await this.lastExamination(itemId, { before: addDays(today, 1), except: supersedesId })),
      safeWorkingLoad: item.markings
        .map((marking) => `${MEASURE_NAMES[marking.measure]} ${markingText(marking)}`)
        .join('; '),
      ...occasionOf(gear, this.catalogue.scheme(store.scheme), today),
      examinedOn: today,
      ...(last ? formOfExaminer(last) : {}),
    };
  }

  /** The inspection rules of a store. @throws Problem `not_found`. */
  async schemeOf(storeId: number): Promise<SchemeDefinition> {
    return this.catalogue.scheme((await this.stores.get(storeId)).scheme);
  }

  private async lastExamination(
    itemId: number,
    which: { before: Day; except: number | undefined },
  ): Promise<ExaminationForm> {
    const last = await lastExamined(this.reads.manager, itemId, which);
    return last ? { lastExaminedOn: last.doneOn } : { noEarlierExamination: 'true' };
  }

  private kindName(kind: string): string {
    return this.catalogue.kinds().find((entry) => entry.kind === kind)?.name ?? kind;
  }
}

function occasionOf(gear: Gear, scheme: SchemeDefinition, today: Day): ExaminationForm {
  if (!lastInspection(gear, 'thoroughExamination', today)) return { occasion: 'beforeFirstUse' };
  const occasions: Readonly<Record<number, Occasion>> = { 6: 'sixMonths', 12: 'twelveMonths' };
  const months = intervalMonths(gear, scheme, today).thoroughExamination;
  const occasion = months === undefined ? undefined : occasions[months];
  return occasion === undefined ? {} : { occasion };
}
