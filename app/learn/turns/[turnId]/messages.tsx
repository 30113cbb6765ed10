'use client';

import { useEffect, useState } from 'react';
import ui from '@/app/_ui/ui.module.css';
import { readMessage } from './actions';

interface Message {
  id: string;
  text: string;
}

/** How often one looks for new messages, ms. */
const EVERY = 10_000;

/** Messages of those who teach, as they come. Without an answer one looks again later; what is shown stays. */
export function Messages({
  turnId,
  atFirst,
  words,
}: {
  turnId: string;
  atFirst: readonly Message[];
  words: { heading: string; read: string };
}) {
  const [messages, setMessages] = useState(atFirst);
  useEffect(() => {
    const look = async () => {
      try {
        const answer = await fetch(`/learn/turns/${turnId}/messages`, { cache: 'no-store' });
        if (answer.ok) setMessages(await answer.json());
      } catch {
        // The network may be away for a while.
      }
    };
    const timer = setInterval(look, EVERY);
    return () => clearInterval(timer);
  }, [turnId]);

  async function read({ id }: Message) {
    setMessages((all) => all.filter((one) => one.id !== id));
    const form = new FormData();
    form.set('turnId', turnId);
    form.set('messageId', id);
    // It comes back with the next look where it was not noted.
    await readMessage(form).catch(() => undefined);
  }

  return (
    <div role="status">
      {messages.map((message) => (
        <div key={message.id} className={`${ui.notice} ${ui.stack}`}>
          <p>
            <b>{words.heading}</b> {message.text}
          </p>
          <button type="button" onClick={() => read(message)}>
            {words.read}
          </button>
        </div>
      ))}
    </div>
  );
}
