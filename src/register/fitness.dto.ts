import { ApiProperty } from '@nestjs/swagger';
import { IsIn } from 'class-validator';
import { DayText } from '../http/day-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { RefusalView, WorkingView } from '../http/rule-views.dto.js';
import { DUTIES, type Duty } from '../rules/gear/gear.js';

/** What an item is asked to be fit for. */
export class AskFitnessDto {
  /** The first duty of its kind when left out. */
  @MayBeLeftOut()
  @IsIn(DUTIES, { message: `choose from ${DUTIES.join(', ')}` })
  duty?: Duty;

  /** The day it would leave the store: today when left out. */
  @MayBeLeftOut()
  @DayText()
  from?: string;

  /** The day it would be back: `from` when left out. */
  @MayBeLeftOut()
  @DayText()
  to?: string;
}

/** Whether an item is fit for a duty on some days, with every reason why not. */
export class FitnessView {
  fit!: boolean;
  duty!: Duty;
  from!: string;
  to!: string;
  @ApiProperty({ type: [Object], description: 'Every reason: code, figures, source.' })
  @ApiProperty({ type: [RefusalView] })
  refusals!: readonly RefusalView[];
  /** The last day it is in date. */
  dueOn?: string;
  cautions!: string[];
  @ApiProperty({ type: [Object], description: 'Each step: title, formula, inputs, result, source.' })
  @ApiProperty({ type: [WorkingView] })
  workings!: readonly WorkingView[];
}
