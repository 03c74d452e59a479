import type { Catalog, Notice } from '../catalog/index.ts';
import { monthStands, type Standing, serialStands, worst } from '../fitment/index.ts';
import type { Now } from '../fork/index.ts';
import type { Flag, Member } from './answer.ts';
import { sourceOf } from './source.ts';

/** A notice that speaks of the fork in front of you, or may. */
export interface NoticeOnFork {
  readonly notice: Notice;
  readonly standing: Exclude<Standing, 'no'>;
}

/** Every notice that applies, or may as far as serial number and month are known. model.md, section 10. */
export function noticesOn(catalog: Catalog, now: Now): NoticeOnFork[] {
  const held = new Set([...now.build.slots.values()].map((content) => content?.sku));
  const { chassis } = now.build;
  return [...catalog.notices.values()].flatMap((notice): NoticeOnFork[] => {
    const speaks =
      (notice.families === null || notice.families.includes(chassis.family)) &&
      (notice.chassis === null || notice.chassis.includes(chassis.id)) &&
      (notice.parts === null || notice.parts.some((sku) => held.has(sku)));
    const standing = worst([
      speaks ? 'yes' : 'no',
      monthStands(notice.months, now.identity.month),
      serialStands(notice.serials, now.identity.serial),
    ]);
    return standing === 'no' ? [] : [{ notice, standing }];
  });
}

/** What a notice that certainly blocks says, as the one member of a conflict. */
export const noticeMember = ({ notice }: NoticeOnFork): Member => ({
  kind: 'notice',
  code: 'notice-blocks',
  params: { notice: notice.id, title: notice.title, text: notice.text },
  source: sourceOf(notice.source),
});

export const noticeFlag = ({ notice, standing }: NoticeOnFork): Flag => ({
  severity: standing === 'perhaps' ? 'verify' : notice.blocks ? 'blocks' : 'verify',
  code: standing === 'perhaps' ? 'notice-check' : 'notice',
  params: {
    notice: notice.id,
    title: notice.title,
    text: notice.text,
    serials: notice.serials
      ? `${notice.serials.letters}${notice.serials.from} to ${notice.serials.letters}${notice.serials.to}`
      : null,
    months: notice.months ? `${notice.months.from ?? 'the first'} to ${notice.months.to ?? 'the last'}` : null,
  },
  source: sourceOf(notice.source),
});
