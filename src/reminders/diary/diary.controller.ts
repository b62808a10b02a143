import { Controller, Get, Query } from '@nestjs/common';
import { SignedIn } from '../../people/access.js';
import { DiaryQueryDto, DiaryView } from './diary.dto.js';
import { DiaryOverview, type Overview } from './diary-overview.service.js';

@Controller('api/diary')
export class DiaryController {
  constructor(private readonly overview: DiaryOverview) {}

  /** What falls due, overdue gear that is out on a job first; the visits that would clear it; the load of the weeks ahead. */
  @SignedIn()
  @Get()
  async read(@Query() query: DiaryQueryDto): Promise<DiaryView> {
    return asView(await this.overview.read(query));
  }
}

function asView(overview: Overview): DiaryView {
  const { today, through, entries, visits, notAtStore, overdue, weeks, catchingUp } = overview;
  return {
    today,
    through,
    entries: [...entries],
    visits: visits.map(({ storeId, storeName, on, who, entries: cleared, savesJobs }) => ({
      ...{ storeId, storeName, on, who },
      itemIds: cleared.map(({ itemId }) => itemId),
      savesJobs: [...savesJobs],
    })),
    notAtStore: notAtStore.map(({ itemId }) => itemId),
    overdue,
    weeks: [...weeks],
    catchingUp,
  };
}
