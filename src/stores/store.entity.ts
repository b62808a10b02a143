import { Column, Entity, PrimaryGeneratedColumn, Unique } from 'typeorm';

@Entity('store')
@Unique('uq_store_name_key', ['nameKey'])
export class StoreEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'varchar', length: 80 })
  name!: string;

  /** The name without case and spacing, so that one store is not entered twice. */
  @Column({ type: 'varchar', length: 80, name: 'name_key' })
  nameKey!: string;

  @Column({ type: 'varchar', length: 200 })
  address!: string;

  /** Key of the inspection scheme that holds where the store stands. */
  @Column({ type: 'varchar', length: 20 })
  scheme!: string;

  /** IANA name. 'Today' in this store is today here. */
  @Column({ type: 'varchar', length: 60, name: 'time_zone' })
  timeZone!: string;

  @Column({ type: 'integer' })
  version!: number;
}
