import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { DefectsService } from './defects.service.js';
import {
  DefectView,
  DueView,
  EventView,
  HistoryLineView,
  InspectionView,
  ItemOutcomeView,
  NewDefectDto,
  NewEventDto,
  NewInspectionDto,
  ReasonDto,
  ScrapDto,
} from './inspections.dto.js';
import { InspectionsService } from './inspections.service.js';
import { ItemRecords } from './item-records.service.js';

@Controller('api/items/:id')
export class InspectionsController {
  constructor(
    private readonly inspections: InspectionsService,
    private readonly defects: DefectsService,
    private readonly records: ItemRecords,
  ) {}

  /** When each inspection of the item falls due, with the working of every day. */
  @SignedIn()
  @Get('due')
  due(@Param('id', IdPipe) id: number): Promise<DueView> {
    return this.records.due(id);
  }

  /** Every inspection of the item, newest first; corrected ones are marked. */
  @SignedIn()
  @Get('inspections')
  listInspections(@Param('id', IdPipe) id: number): Promise<InspectionView[]> {
    return this.records.inspections(id);
  }

  /**
   * Records an inspection. Thorough examinations and proof load tests need a competent person, interim inspections a
   * competent person or a storeman who names who did it. A check before use is refused here: see `checks`.
   */
  @SignedIn()
  @Post('inspections')
  record(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: NewInspectionDto,
  ): Promise<ItemOutcomeView> {
    return this.inspections.record(me, id, input);
  }

  /** Every defect of the item, open ones first. */
  @SignedIn()
  @Get('defects')
  listDefects(@Param('id', IdPipe) id: number): Promise<DefectView[]> {
    return this.records.defects(id);
  }

  /** Reports a defect. An immediate danger quarantines the item at once. */
  @SignedIn()
  @Post('defects')
  reportDefect(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: NewDefectDto,
  ): Promise<ItemOutcomeView> {
    return this.defects.reportDefect(me, id, input);
  }

  /** Everything that happened to the item. */
  @SignedIn()
  @Get('events')
  listEvents(@Param('id', IdPipe) id: number): Promise<EventView[]> {
    return this.records.events(id);
  }

  /** Records that the item was dropped, overloaded, altered, repaired or long out of use. */
  @SignedIn()
  @Post('events')
  recordEvent(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: NewEventDto,
  ): Promise<ItemOutcomeView> {
    return this.defects.recordEvent(me, id, input);
  }

  /** Takes the item out of service. */
  @SignedIn()
  @Post('quarantine')
  quarantine(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: ReasonDto,
  ): Promise<ItemOutcomeView> {
    return this.defects.quarantine(me, id, input.reason);
  }

  /** Sends the item to repair. It comes back by an examination only. */
  @Roles('storeman', 'competentPerson', 'manager')
  @Post('repair')
  startRepair(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: ReasonDto,
  ): Promise<ItemOutcomeView> {
    return this.defects.startRepair(me, id, input.reason);
  }

  /** Scraps the item for good. */
  @Roles('competentPerson', 'manager')
  @Post('scrap')
  scrap(@Me() me: Actor, @Param('id', IdPipe) id: number, @Body() input: ScrapDto): Promise<ItemOutcomeView> {
    return this.defects.scrap(me, id, input);
  }

  /** The item's lines of the ledger, newest first. */
  @SignedIn()
  @Get('history')
  history(@Param('id', IdPipe) id: number): Promise<HistoryLineView[]> {
    return this.records.history(id);
  }
}
