import { Controller, Get, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerPage } from '../http/answer-form.js';
import { Me, Roles } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { LedgerCheckView, LedgerEntryView } from './ledger.dto.js';
import { Ledger } from './ledger.service.js';
import { ledgerPage } from './ledger.view.js';

const SHOWN = 100;

@Controller()
export class LedgerController {
  constructor(private readonly ledger: Ledger) {}

  /** The newest 100 entries of the history, newest first. */
  @Roles('manager', 'competentPerson')
  @Get('api/ledger')
  async newest(): Promise<LedgerEntryView[]> {
    const entries = await this.ledger.newest(SHOWN);
    return entries.map((entry) => ({ ...entry, detail: Object(entry.detail) as object }));
  }

  /** Checks every entry of the history. */
  @Roles('manager', 'competentPerson')
  @Get('api/ledger/check')
  async check(): Promise<LedgerCheckView> {
    const found = await this.ledger.verify();
    return { ...found, whole: found.fault === undefined };
  }

  @Roles('manager', 'competentPerson')
  @Get('ledger')
  async show(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, ledgerPage({ me, entries: await this.ledger.newest(SHOWN) }));
  }

  /** A page of its own, since reading the whole of a long history takes its time. */
  @Roles('manager', 'competentPerson')
  @Get('ledger/check')
  async showCheck(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    const check = await this.check();
    await answerPage(reply, ledgerPage({ me, entries: await this.ledger.newest(SHOWN), check }));
  }
}
