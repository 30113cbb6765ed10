import { exportAnswer } from '@/app/_server/account/export-answer';
import { download } from '@/app/_server/guard';

/** Everything held on whoever asks, in every organisation. */
export const GET = download('/me/export/[format]', (permit, _, { format }: { format: string }) =>
  exportAnswer(permit, format, { personId: permit.session.actor.personId }),
);
