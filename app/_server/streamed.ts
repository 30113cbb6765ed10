/**
 * A file to keep, sent while it is written. No cache keeps it.
 *
 * @param name  Shown to whoever saves it; names nobody.
 */
export function streamed(
  pieces: AsyncGenerator<string | Uint8Array>,
  { type, name }: { type: string; name: string },
): Response {
  const encoder = new TextEncoder();
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await pieces.next();
      if (done) controller.close();
      else controller.enqueue(typeof value === 'string' ? encoder.encode(value) : value);
    },
    async cancel() {
      await pieces.return(undefined);
    },
  });
  return new Response(body, {
    headers: {
      'Content-Type': type,
      'Content-Disposition': `attachment; filename="${name}"`,
      'Cache-Control': 'no-store',
    },
  });
}
