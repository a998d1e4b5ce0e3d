/**
 * `<plate-relief>`: a mode as a lit surface, turned by the pointer or the arrow keys, still or swinging slowly. It draws nothing while
 * nobody sees it: not behind another tab, not scrolled away, and it never swings where the person asked for little motion.
 */
import { coloursOf, type ReliefColours } from './colours.js';
import { paint, type ReliefPicture } from './paint.js';
import type { Stand } from './relief.js';

export const FIRST_STAND: Stand = { turn: 20, height: 48 };

/** ms: a slow pendulum; the plate itself swings hundreds of times a second. */
const PERIOD = 2600;
/** Degrees for each point of the page, and for each press of a key. */
const TURNED = 0.5;
const PRESSED = 6;
const LOWEST = 12;

export class PlateRelief extends HTMLElement {
  private readonly canvas = document.createElement('canvas');
  private shown: ReliefPicture | undefined;
  private stand = FIRST_STAND;
  private swings = false;
  private seen = true;
  private colours: ReliefColours | undefined;
  private begun = 0;
  private next: number | undefined;
  private watching: (() => void) | undefined;
  /** Pictures drawn so far: what a test counts. */
  drawn = 0;

  set picture(picture: ReliefPicture) {
    if (picture === this.shown) return;
    this.shown = picture;
    this.soon();
  }

  set moving(moving: boolean) {
    if (moving === this.swings) return;
    this.swings = moving;
    this.begun = performance.now();
    this.soon();
  }

  connectedCallback(): void {
    this.append(this.canvas);
    const sizes = new ResizeObserver(() => this.soon());
    sizes.observe(this);
    const sight = new IntersectionObserver(([entry]) => {
      this.seen = entry?.isIntersecting ?? true;
      this.soon();
    });
    sight.observe(this);
    // The editor writes the theme on the body.
    const themes = new MutationObserver(() => {
      this.colours = undefined;
      this.soon();
    });
    themes.observe(document.body, { attributes: true, attributeFilter: ['class', 'style'] });
    this.canvas.addEventListener('pointerdown', this.grip);
    this.addEventListener('keydown', this.press);
    this.watching = () => {
      for (const each of [sizes, sight, themes]) each.disconnect();
      this.canvas.removeEventListener('pointerdown', this.grip);
      this.removeEventListener('keydown', this.press);
    };
  }

  disconnectedCallback(): void {
    this.watching?.();
    if (this.next !== undefined) cancelAnimationFrame(this.next);
    this.next = undefined;
  }

  private readonly grip = (down: PointerEvent): void => {
    const from = this.stand;
    const { canvas } = this;
    canvas.setPointerCapture(down.pointerId);
    const move = (event: PointerEvent) =>
      this.standAt(
        from.turn + (event.clientX - down.clientX) * TURNED,
        from.height + (event.clientY - down.clientY) * TURNED,
      );
    canvas.addEventListener('pointermove', move);
    canvas.addEventListener('lostpointercapture', () => canvas.removeEventListener('pointermove', move), {
      once: true,
    });
  };

  private readonly press = (event: KeyboardEvent): void => {
    const [turn, height] = STEPS.get(event.key) ?? [0, 0];
    if (turn === 0 && height === 0) return;
    event.preventDefault();
    this.standAt(this.stand.turn + turn * PRESSED, this.stand.height + height * PRESSED);
  };

  private standAt(turn: number, height: number): void {
    this.stand = { turn, height: Math.max(LOWEST, Math.min(90, height)) };
    this.soon();
  }

  /** With the next picture of the browser, which draws none while the page is hidden. */
  private soon(): void {
    if (this.next === undefined && this.seen && this.isConnected) this.next = requestAnimationFrame(this.draw);
  }

  private readonly draw = (now: number): void => {
    this.next = undefined;
    const { shown, canvas } = this;
    const context = canvas.getContext('2d');
    if (!shown || !context) return;
    const size = [
      Math.round(this.clientWidth * devicePixelRatio),
      Math.round(this.clientHeight * devicePixelRatio),
    ] as const;
    if (size[0] === 0 || size[1] === 0) return;
    if (canvas.width !== size[0] || canvas.height !== size[1]) [canvas.width, canvas.height] = size;
    const swing = this.swings ? Math.cos((2 * Math.PI * (now - this.begun)) / PERIOD) : 1;
    this.colours ??= coloursOf(this);
    paint(context, size, shown, { stand: this.stand, swing, colours: this.colours });
    this.drawn += 1;
    if (this.swings) this.soon();
  };
}

const STEPS: ReadonlyMap<string, readonly [turn: number, height: number]> = new Map([
  ['ArrowLeft', [-1, 0]],
  ['ArrowRight', [1, 0]],
  ['ArrowUp', [0, 1]],
  ['ArrowDown', [0, -1]],
]);

/** Whether the person, or the editor for them, has asked for little motion. */
export function asksForLittleMotion(): boolean {
  return (
    document.body.classList.contains('vscode-reduce-motion') || matchMedia('(prefers-reduced-motion: reduce)').matches
  );
}
