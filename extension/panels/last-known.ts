/**
 * After an edit the answer of the solver is a moment away: until then the last one to the same question stands in, marked
 * `waiting`, so that the eye has something to hold on to.
 */
export class LastKnown<T extends { readonly state: 'known' | 'waiting' | 'unknown' }> {
  private last: { readonly question: string; readonly answer: T } | undefined;

  /** `answer` itself, or while it is being worked out the last known one. */
  of(question: readonly string[], answer: T | null): T | null {
    const asked = question.join(' ');
    if (answer?.state === 'waiting' && this.last?.question === asked) return { ...this.last.answer, state: 'waiting' };
    if (answer?.state === 'known') this.last = { question: asked, answer };
    return answer;
  }
}
