import { notFound } from 'next/navigation';
import { exportAnswer } from '@/app/_server/account/export-answer';
import { download } from '@/app/_server/guard';

/** Everything held on a member in the organisation being worked in. */
export const GET = download(
  '/people/[personId]/export/[format]',
  (permit, _, { format }: { personId: string; format: string }) => {
    if (permit.resource.kind !== 'member') notFound();
    const { personId, organizationId } = permit.resource;
    return exportAnswer(permit, format, { personId, organizationId });
  },
);
