import { Global, Module } from '@nestjs/common';
import { Clock } from '../clock.js';
import { LedgerController } from './ledger.controller.js';
import { Ledger } from './ledger.service.js';
import { RequestClaims } from './request-claims.service.js';

/** The history, for every module: nothing changes without it. */
@Global()
@Module({
  controllers: [LedgerController],
  providers: [Ledger, RequestClaims, Clock],
  exports: [Ledger, RequestClaims, Clock],
})
export class LedgerModule {}
