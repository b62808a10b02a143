import { Module } from '@nestjs/common';
import { RulesPages } from './rules.pages.js';

/** Shows the facts of `config/` that every verdict rests on. */
@Module({ controllers: [RulesPages] })
export class RulesPageModule {}
