'use client';

import { Component, type ReactNode } from 'react';

/** Keeps an error in what is shown from taking the editor, and all that was typed, with it. Another `key` tries anew. */
export class PreviewBoundary extends Component<{ failed: ReactNode; children: ReactNode }, { hasFailed: boolean }> {
  override state = { hasFailed: false };

  static getDerivedStateFromError() {
    return { hasFailed: true };
  }

  override render() {
    return this.state.hasFailed ? this.props.failed : this.props.children;
  }
}
