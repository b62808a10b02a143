import { Controller, Get, Param } from '@nestjs/common';
import { IdPipe } from '../../http/id.pipe.js';
import { SignedIn } from '../../people/access.js';
import { JobCalculationView, KeptCalculationView } from './calculation.dto.js';
import { Calculations } from './calculations.service.js';

@Controller('api/jobs/:id/calculation')
export class CalculationController {
  constructor(private readonly calculations: Calculations) {}

  /** The arithmetic of a job as it stands, and the sheets that were kept with its booking. */
  @SignedIn()
  @Get()
  async current(@Param('id', IdPipe) id: number): Promise<JobCalculationView> {
    const { sheet, kept } = await this.calculations.current(id);
    return { sheet, kept };
  }

  /** A sheet as it stood when gear was reserved. */
  @SignedIn()
  @Get(':sheetId')
  async kept(
    @Param('id', IdPipe) id: number,
    @Param('sheetId', IdPipe) sheetId: number,
  ): Promise<KeptCalculationView> {
    const { keptAt, fingerprint, sheet } = await this.calculations.kept(id, sheetId);
    return { keptAt, fingerprint, sheet };
  }
}
