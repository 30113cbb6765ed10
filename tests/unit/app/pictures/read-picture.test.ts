import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { type MadePicture, readPicture } from '@/app/_server/pictures/read-picture';

const red = { r: 200, g: 30, b: 30 };

function drawn(width = 64, height = 48) {
  return sharp({ create: { width, height, channels: 3, background: red } });
}

async function made(bytes: Uint8Array): Promise<MadePicture> {
  const picture = await readPicture(bytes);
  if (typeof picture === 'string') throw new Error(picture);
  return picture;
}

/** Width, height and data of a PNG that says it is larger than it is worth. */
function pngOf(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc(body));
    return Buffer.concat([length, body, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([1, 0, 0, 0, 0], 8);
  const rows = deflateSync(Buffer.alloc((Math.ceil(width / 8) + 1) * height));
  const signature = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
  return Buffer.concat([signature, chunk('IHDR', head), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))]);
}

function crc(bytes: Buffer): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

describe('a picture is drawn anew', () => {
  test.each(['png', 'jpeg', 'webp'] as const)('out of a %s', async (format) => {
    const picture = await made(await drawn().toFormat(format).toBuffer());
    const found = await sharp(picture.webp).metadata();
    expect(found).toMatchObject({ format: 'webp', width: 64, height: 48 });
    expect(picture).toMatchObject({ width: 64, height: 48 });
  });

  test('without what its file told of where it was taken', async () => {
    const exif = { IFD0: { Copyright: 'HUSH' }, IFD3: { GPSLatitude: '51/1 30/1 0/1' } };
    const jpeg = await drawn().jpeg().withExif(exif).withIccProfile('p3').toBuffer();
    expect(jpeg.includes('HUSH')).toBe(true);
    const { webp } = await made(jpeg);
    const found = await sharp(webp).metadata();
    expect([found.exif, found.icc, found.xmp]).toEqual([undefined, undefined, undefined]);
    expect(webp.includes('HUSH')).toBe(false);
  });

  test('the right way up', async () => {
    const sideways = await drawn(60, 20).jpeg().withMetadata({ orientation: 6 }).toBuffer();
    expect(await made(sideways)).toMatchObject({ width: 20, height: 60 });
  });

  test('no longer than 1,600 pixels, and no larger than it was', async () => {
    expect(await made(await drawn(3200, 400).jpeg().toBuffer())).toMatchObject({ width: 1600, height: 200 });
    expect(await made(await drawn(40, 10).png().toBuffer())).toMatchObject({ width: 40, height: 10 });
  });

  test('without what was hung on behind it', async () => {
    const jpeg = await drawn().jpeg().toBuffer();
    const page = Buffer.from('<script>alert(1)</script>PK\x03\x04 a whole archive');
    const { webp } = await made(Buffer.concat([jpeg, page]));
    expect(webp.includes('script')).toBe(false);
    expect(webp.includes('PK\x03\x04')).toBe(false);
  });
});

const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="file:///etc/passwd"/></svg>';

describe('what is no picture of ours is refused', () => {
  test.each([
    ['nothing', Buffer.alloc(0)],
    ['a drawing that can carry scripts', Buffer.from(svg)],
    ['such a drawing behind a declaration', Buffer.from(`<?xml version="1.0"?>${svg}`)],
    ['a GIF', Buffer.from('R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7', 'base64')],
    ['a page', Buffer.from('<!doctype html><script>alert(1)</script>')],
    ['a PDF', Buffer.from('%PDF-1.7\n1 0 obj\n')],
    ['a TIFF', Buffer.from('II*\0\b\0\0\0', 'latin1')],
    ['an archive with a picture’s name', Buffer.from('PK\x03\x04picture.png', 'latin1')],
    ['a picture with a page before it', Buffer.concat([Buffer.from('<html>'), pngOf(8, 8)])],
  ])('%s', async (_, bytes) => {
    expect(await readPicture(bytes)).toBe('picture-kind');
  });

  test('another kind under the first bytes of one of ours', async () => {
    for (const head of ['\x89PNG\r\n\x1a\n', '\xff\xd8\xff', 'RIFF\0\0\0\0WEBP'])
      expect(await readPicture(Buffer.from(`${head}${svg}`, 'latin1'))).toBe('picture-broken');
  });

  test('one that is cut off', async () => {
    const noise = sharp({
      create: {
        width: 300,
        height: 300,
        channels: 3,
        background: red,
        noise: { type: 'gaussian', mean: 128, sigma: 40 },
      },
    });
    for (const format of ['png', 'jpeg', 'webp'] as const) {
      const whole = await noise.clone().toFormat(format).toBuffer();
      expect(await readPicture(whole), format).toMatchObject({ width: 300 });
      for (const part of [0.5, 0.9])
        expect(await readPicture(whole.subarray(0, whole.length * part)), `${format} ${part}`).toBe('picture-broken');
    }
  });

  test('one that would unfold to more than 40 million pixels', async () => {
    const bomb = pngOf(30_000, 30_000);
    expect(bomb.length).toBeLessThan(200_000);
    expect(await readPicture(bomb)).toBe('picture-large');
    expect(await readPicture(pngOf(8, 8))).toMatchObject({ width: 8, height: 8 });
  });

  test('one that moves', async () => {
    const frames = await Promise.all(
      ['red', 'green', 'blue'].map((background) => drawn().tint(background).png().toBuffer()),
    );
    const moving = await sharp(frames, { join: { animated: true } })
      .webp({ delay: [100, 100, 100] })
      .toBuffer();
    expect((await sharp(moving).metadata()).pages).toBe(3);
    expect(await readPicture(moving)).toBe('picture-moves');
  });
});
