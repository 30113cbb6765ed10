import { download } from '@/app/_server/guard';
import { readOdds } from '@/app/_server/readiness/read-odds';
import { readReport } from '@/app/_server/readiness/read-report';
import { reportPdf } from '@/app/_server/readiness/report-pdf';
import { reportText } from '@/app/_server/readiness/report-text';

/** The report of one person as a document. */
export const GET = download(
  '/readiness/[personId]/[profileId]/pdf',
  async (permit, _request, { profileId }: { personId: string; profileId: string }) => {
    const report = await readReport(permit, profileId, new Date());
    if (!report) return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
    const text = await reportText(report, await readOdds(report.profile), permit.session.name);
    const bytes = await reportPdf(report, text);
    return new Response(new Uint8Array(bytes), {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': `attachment; filename="readiness-${profileId}.pdf"`,
        'cache-control': 'private, no-store',
      },
    });
  },
);
