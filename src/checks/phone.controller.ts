import { Controller, Get, Param, Query } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { SignedIn } from '../people/access.js';
import { PhoneBundleView, PhoneJobView, TagAnswerView, TagQueryDto } from './phone.dto.js';
import { PhoneService } from './phone.service.js';

@Controller('api/phone')
export class PhoneController {
  constructor(private readonly phone: PhoneService) {}

  /** The jobs that have gear out, or gear reserved and today among their days. */
  @SignedIn()
  @Get('jobs')
  jobs(): Promise<PhoneJobView[]> {
    return this.phone.jobs();
  }

  /** All that a phone needs for the checks of the job while it has no network. */
  @SignedIn()
  @Get('jobs/:id')
  bundle(@Param('id', IdPipe) id: number): Promise<PhoneBundleView> {
    return this.phone.bundle(id);
  }

  /** What a tag means. Where it is not certain, every item whose tag reads alike is given, and a person chooses. */
  @SignedIn()
  @Get('tags')
  tagged(@Query() { tag }: TagQueryDto): Promise<TagAnswerView> {
    return this.phone.tagged(tag);
  }
}
