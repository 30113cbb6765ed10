'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import ui from '../ui.module.css';
import { lengthInWords } from './length-in-words';

const MINUTE = 60_000;
const SOON = 5 * MINUTE;

/** Words for time that runs out; `{time}` in `left` stands for how long. */
interface Words {
  left: string;
  lastMinute: string;
  over: string;
  closes: string;
}

/**
 * Counts down what the server said is left: only what has passed since the page came is counted here.
 *
 * @param left  Milliseconds, when the page was made.
 */
export function Countdown({ left: atFirst, words, locale }: { left: number; words: Words; locale: string }) {
  const router = useRouter();
  const [left, setLeft] = useState(atFirst);
  useEffect(() => {
    const came = performance.now();
    const tick = () => setLeft(atFirst - (performance.now() - came));
    const timer = setInterval(tick, 5000);
    return () => clearInterval(timer);
  }, [atFirst]);
  const over = left <= 0;
  useEffect(() => {
    // What was on its way still counts for a moment; then the page shows how it went.
    const timer = over ? setTimeout(() => router.refresh(), 16_000) : undefined;
    return () => clearTimeout(timer);
  }, [over, router]);
  const said = (time: number) => words.left.replace('{time}', lengthInWords(time, locale));
  const shown = over ? words.over : left < MINUTE ? words.lastMinute : said(left);
  return (
    <p className={left < SOON ? ui.notice : undefined}>
      <span role="timer">{shown}</span> · {words.closes}
      {/* Said twice and no oftener, where the minutes are not watched. */}
      <span role="status" className={ui.unseen}>
        {left < MINUTE ? shown : left < SOON ? said(SOON) : ''}
      </span>
    </p>
  );
}
