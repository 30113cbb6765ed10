import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { plainText } from '@/app/_server/questions/plain-text';
import { MarkdownLine, MarkdownText } from '@/app/_ui/questions/markdown-text';

function text(markdown: string, level = 3): string {
  return renderToStaticMarkup(createElement(MarkdownText, { markdown, level }));
}

function line(markdown: string): string {
  return renderToStaticMarkup(createElement(MarkdownLine, { markdown }));
}

const hostile = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  'a <b onclick="alert(1)">b</b> c',
  '<svg/onload=alert(1)>',
  '<iframe src="https://example.org"></iframe>',
  '<a href="javascript:alert(1)">x</a>',
  '<style>body{display:none}</style>',
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '[x](java\nscript:alert(1))',
  '[x](&#106;avascript:alert(1))',
  '[x](data:text/html;base64,PHNjcmlwdD4=)',
  '[x](vbscript:x)',
  '[x](/people)',
  '[x](//example.org)',
  '[x](ftp://example.org)',
  '<javascript:alert(1)>',
  '![x](https://example.org/x.png)',
  '![x](javascript:alert(1))',
  '[![x](https://example.org/x.png)](javascript:alert(1))',
  '[x]: javascript:alert(1)\n\n[x]',
  '`<script>`alert(1)',
];

test.each(hostile)(
  '%j brings no markup of its own, no picture and no address but to the web or to mail',
  (markdown) => {
    for (const html of [text(markdown), line(markdown)]) {
      expect(html).not.toMatch(/<(script|img|svg|iframe|style|b|input|form)\b/i);
      expect(html).not.toMatch(/\son\w+=/i);
      expect(html).not.toMatch(/href=/i);
      expect(html).not.toMatch(/\ssrc=/i);
    }
  },
);

test.each([
  ['[x](https://example.org/a?b=c)', 'https://example.org/a?b=c'],
  ['[x](HTTP://example.org)', 'HTTP://example.org'],
  ['<https://example.org>', 'https://example.org'],
  ['[x](mailto:shop@example.org)', 'mailto:shop@example.org'],
])('%s leads there, and tells nobody where from', (markdown, address) => {
  expect(text(markdown)).toContain(`<a href="${address}" rel="noopener noreferrer nofollow">`);
});

test('what a link that leads nowhere says is still there', () => {
  expect(text('see [the sheet](javascript:alert(1)) first')).toContain('<p>see the sheet first</p>');
});

test('headings stand below those of the page, as far apart as they were written', () => {
  expect(text('# One\n\n### Three')).toMatch(/<h3>One<\/h3>\s*<h5>Three<\/h5>/);
  expect(text('## Two\n\n### Three', 2)).toMatch(/<h2>Two<\/h2>\s*<h3>Three<\/h3>/);
  expect(text('# One\n\n###### Six')).toContain('<h6>Six</h6>');
});

test('a line has no blocks and nothing to press', () => {
  expect(line('# A *filter*\n\n- one [x](https://example.org)')).not.toMatch(/<(h\d|ul|li|p|a)\b/);
  expect(line('two **bar**, `SPN 94`')).toBe('two <strong>bar</strong>, <code>SPN 94</code>');
});

test.each([
  ['A **bold** [link](https://example.org) and `code`', 'A bold link and code'],
  ['# Head\n\n- one\n- two', 'Head one two'],
  ['![alt](x.png) <b>x</b>', 'alt x'],
  ['2 * 3 * 4 and a_b', '2 * 3 * 4 and a_b'],
  ['***all*** at __once__, _now_', 'all at once, now'],
  ['a drop < 3 kPa or > 9 kPa', 'a drop < 3 kPa or > 9 kPa'],
])('%j is read out without its marks', (markdown, plain) => {
  expect(plainText({ markdown })).toBe(plain);
});
