import { describe, expect, test } from 'vitest';
import { readSchemeForm } from '@/app/_server/schemes/read-scheme-form';
import { type Scheme, schemeWords } from '@/lib/readiness/scheme';
import { aScheme } from '../../support/competency-rows';

const base = twoTopics();
const topics = ['filtration', 'suction-tank-and-air', 'fuel-quality'];

function twoTopics(changes: Partial<Scheme> = {}): Scheme {
  const blueprint = ['filtration', 'suction-tank-and-air'].map((topic) => ({ topic, share: 0.5, atLeast: 3 }));
  const cut = { ability: 0.5, standardError: null, setBy: { kind: 'assumed', because: 'A start' } } as const;
  return aScheme({ blueprint, cut, ...changes });
}

function aForm(changes: Record<string, string> = {}): FormData {
  const form = new FormData();
  const fields: Record<string, string> = {
    ...Object.fromEntries(schemeWords.map((name) => [name, base.text.en[name]])),
    note: 'The line is another',
    analysedOn: '2026-02-01',
    reviewMonths: '24',
    'share.filtration': '50',
    'atLeast.filtration': '3',
    'share.suction-tank-and-air': '50',
    'atLeast.suction-tank-and-air': '3',
    'share.fuel-quality': '0',
    'atLeast.fuel-quality': '0',
    ability: '0.5',
    because: '',
    minutes: '60',
    maximum: '20',
    confidence: '90',
    refuse: '10',
    windowDays: '365',
    validMonths: '24',
    waitDays: '14, 30',
    perYear: '3',
    appealWithin: '30',
    appealAnswered: '20',
    ...changes,
  };
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
}

function wrongIn(changes: Record<string, string>) {
  const read = readSchemeForm(aForm(changes), base, topics);
  return 'wrong' in read ? read.wrong : {};
}

describe('the form of a scheme', () => {
  test('makes the next version, and leaves out a topic without a share', () => {
    const read = readSchemeForm(aForm(), base, topics);
    expect(read).toMatchObject({ scheme: { version: 2, blueprint: base.blueprint, cut: base.cut } });
  });

  test('keeps a cut that judges set unless another is typed, which then needs a reason', () => {
    const setBy = { kind: 'panel', panelId: 'p', judges: 5, at: 0 } as const;
    const judged = twoTopics({ cut: { ability: 0.512, standardError: 0.1, setBy } });
    const kept = readSchemeForm(aForm({ ability: '0.51' }), judged, topics);
    expect(kept).toMatchObject({ scheme: { cut: judged.cut } });
    expect(readSchemeForm(aForm({ ability: '0.8' }), judged, topics)).toEqual({ wrong: { because: 'missing' } });
    const moved = readSchemeForm(aForm({ ability: '0.8', because: 'Too easy' }), judged, topics);
    expect(moved).toMatchObject({ scheme: { cut: { ability: 0.8, standardError: null, setBy: { kind: 'assumed' } } } });
  });

  test('says everything that is wrong at its field', () => {
    const wrong = wrongIn({ name: '', confidence: 'much', waitDays: '14; 30', 'share.filtration': '49', note: '' });
    expect(wrong).toEqual({
      name: 'missing',
      confidence: 'whole',
      waitDays: 'wait',
      blueprint: 'sum',
      note: 'missing',
    });
    expect(wrongIn({ analysedOn: '2026-13-45', ability: '9', claim: 'x'.repeat(2001) })).toEqual({
      analysedOn: 'date',
      ability: 'cut',
      because: 'missing',
      claim: 'too-long',
    });
  });
});
