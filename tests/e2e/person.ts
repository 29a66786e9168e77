import type {ElementHandle, Page} from 'puppeteer-core';

/** Everything of the page in reading order, through its shadow roots, as a person sees one page. */
const deepSource = `(() => {
  const found = [];
  const walk = (root) => {
    for (const element of root.querySelectorAll('*')) {
      found.push(element);
      if (element.shadowRoot) walk(element.shadowRoot);
    }
  };
  walk(document);
  return found;
})()`;

/** What a person, or a screen reader, calls an element. */
const nameSource = `(element) => (element.getAttribute('aria-label')
  ?? (element.getAttribute('aria-labelledby') && element.getRootNode().getElementById(element.getAttribute('aria-labelledby'))?.textContent)
  ?? (element.labels?.length ? element.labels[0].textContent : undefined)
  ?? element.textContent ?? '').replace(/\\s+/g, ' ').trim()`;

const shownSource = `(element) => element.getClientRects().length > 0 && getComputedStyle(element).visibility !== 'hidden'`;

const pressable =
  'button, a[href], summary, label, [role=button], [role=tab], [role=radio], [role=option], input';

const patience = 15_000;

/** Someone at the tutor: with a mouse, with a finger, or with the keyboard alone. */
export class Person {
  readonly page: Page;
  readonly touch: boolean;

  constructor(page: Page, touch: boolean) {
    this.page = page;
    this.touch = touch;
  }

  /** The first shown element that matches a selector, wherever it lies; waits for it. */
  async find(selector: string): Promise<ElementHandle<HTMLElement>> {
    return this.until(`no ${selector} is shown`, () =>
      this.page.evaluateHandle(
        `${deepSource}.find((element) => element.matches(${JSON.stringify(selector)}) && (${shownSource})(element))`,
      ),
    );
  }

  /** The first shown thing to press that is called so (a part of its name is enough); waits for it. */
  async called(name: string, selector = pressable): Promise<ElementHandle<HTMLElement>> {
    return this.until(`nothing to press is called "${name}"`, () =>
      this.page.evaluateHandle(
        `${deepSource}.find((element) => element.matches(${JSON.stringify(selector)}) && (${shownSource})(element)
          && (${nameSource})(element).includes(${JSON.stringify(name)}))`,
      ),
    );
  }

  /** Presses a button, link, tab or choice by its name. */
  async press(name: string, selector?: string): Promise<void> {
    await this.hit(await this.called(name, selector));
  }

  async pressOn(selector: string): Promise<void> {
    await this.hit(await this.find(selector));
  }

  /** Types over what stands in the field. */
  async write(selector: string, text: string): Promise<void> {
    await this.writeOver(await this.find(selector), text);
  }

  /** The same for a field that is called so. */
  async writeIn(name: string, text: string): Promise<void> {
    await this.writeOver(await this.called(name, 'input, textarea'), text);
  }

  private async writeOver(field: ElementHandle<HTMLElement>, text: string): Promise<void> {
    await this.hit(field);
    await field.evaluate((input) => (input as HTMLInputElement).select());
    await this.page.keyboard.type(text);
  }

  /** Text of the first shown element that matches. */
  async text(selector: string): Promise<string> {
    const element = await this.find(selector);
    return element.evaluate((it) => (it.textContent ?? '').replace(/\s+/g, ' ').trim());
  }

  /** Waits until the text of the first shown match has this in it. */
  async sees(text: string, selector: string): Promise<void> {
    await this.until(`"${text}" is not in ${selector}`, () =>
      this.page.evaluateHandle(
        `${deepSource}.find((element) => element.matches(${JSON.stringify(selector)}) && (${shownSource})(element)
          && element.textContent.replace(/\\s+/g, ' ').includes(${JSON.stringify(text)}))`,
      ),
    );
  }

  /** All the text on the page, shadow roots included, without styles and scripts. */
  async wholeText(): Promise<string> {
    return (await this.page.evaluate(
      `${deepSource}.flatMap((element) => [...element.childNodes]
        .filter((node) => node.nodeType === 3 && !element.matches('style, script'))
        .map((node) => node.data)).join(' ').replace(/\\s+/g, ' ')`,
    )) as string;
  }

  async key(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key as 'Enter');
  }

  /** Presses Tab until what is in focus is called so. */
  async tabTo(name: string, most = 90): Promise<void> {
    const names: string[] = [];
    for (let i = 0; i < most; i++) {
      await this.key('Tab');
      const inFocus = await this.nameInFocus();
      if (inFocus.includes(name)) return;
      names.push(inFocus.slice(0, 40));
    }
    throw new Error(`The Tab key never reached "${name}"; it went over: ${names.join(' | ')}`);
  }

  async nameInFocus(): Promise<string> {
    return (await this.page.evaluate(
      `(() => { let at = document.activeElement; while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
        return at ? (${nameSource})(at) : ''; })()`,
    )) as string;
  }

  /** Brings a terminal under the finger or mouse as a person does (zoom, drag) and picks it on the drawing. */
  async pickOnDrawing(terminal: string): Promise<void> {
    await this.pickOn(`[data-terminal="${terminal}"] .reach, [data-terminal="${terminal}"]`);
  }

  /** The same for a wire, in the middle of its line. */
  async pickWireOnDrawing(wire: string): Promise<void> {
    await this.pickOn(`[data-wire="${wire}"] .core`);
  }

  /** The same for a part. */
  async pickPartOnDrawing(part: string): Promise<void> {
    await this.pickOn(`[data-target="part ${part}"]`);
  }

  private async pickOn(selector: string): Promise<void> {
    for (let tries = 0; tries < 24; tries++) {
      const at = await this.placeOf(selector);
      if (at.scale < 0.9) {
        await this.press('Zoom in');
      } else if (at.dx !== 0 || at.dy !== 0) {
        await this.drag(at.frameX, at.frameY, at.dx, at.dy);
      } else if (await this.staysAt(selector, at)) {
        if (this.touch) await this.page.touchscreen.tap(at.x, at.y);
        else await this.page.mouse.click(at.x, at.y);
        return;
      }
      await settle();
    }
    throw new Error(`${selector} could not be brought under the pointer.`);
  }

  /** A drawing that is being set anew (a caution was folded, another meter function chosen) is left to come to rest. */
  private async staysAt(selector: string, at: {x: number; y: number}): Promise<boolean> {
    await settle();
    const again = await this.placeOf(selector);
    return Math.hypot(again.x - at.x, again.y - at.y) < 1;
  }

  /** Where a mark is drawn now, and how far the drawing must be dragged for it to be well inside the frame. */
  private async placeOf(selector: string) {
    const drawing = await this.find('rb-unit-diagram');
    // no named function in here: some compilers wrap those in a helper that the page does not have
    const seen = await drawing.evaluate((element, wanted) => {
      const root = element.shadowRoot!;
      const frame = root.querySelector('.frame')!.getBoundingClientRect();
      const mark = root.querySelector<SVGGraphicsElement>(wanted)!;
      const box = mark.getBoundingClientRect();
      // a line is met in its middle, which need not be the middle of its box
      const line = mark instanceof SVGPathElement ? mark : undefined;
      const on = line
        ?.getPointAtLength(line.getTotalLength() / 2)
        .matrixTransform(line.getScreenCTM()!);
      return {
        x: on?.x ?? box.left + box.width / 2,
        y: on?.y ?? box.top + box.height / 2,
        scale:
          1 / Number(root.querySelector<SVGGElement>('.world')!.style.getPropertyValue('--k') || 1),
        frame: {left: frame.left, right: frame.right, top: frame.top, bottom: frame.bottom},
        toolsTop: root.querySelector('.tools')!.getBoundingClientRect().top,
      };
    }, selector);
    const {x, y, scale, frame} = seen;
    const margin = 28;
    // the lower edge ends above the zoom buttons, which lie over the drawing
    const lowest = Math.min(frame.bottom, seen.toolsTop) - margin;
    const middle = {x: (frame.left + frame.right) / 2, y: (frame.top + lowest) / 2};
    const outX = x < frame.left + margin || x > frame.right - margin;
    const outY = y < frame.top + margin || y > lowest;
    const limited = (wanted: number, size: number): number =>
      Math.sign(wanted) * Math.min(Math.abs(wanted), size * 0.4);
    return {
      x,
      y,
      scale,
      frameX: middle.x,
      frameY: middle.y,
      dx: outX ? limited(middle.x - x, frame.right - frame.left) : 0,
      dy: outY ? limited(middle.y - y, lowest - frame.top) : 0,
    };
  }

  private async drag(x: number, y: number, dx: number, dy: number): Promise<void> {
    const [fromX, fromY] = [x - dx / 2, y - dy / 2];
    const steps = [0.25, 0.5, 0.75, 1];
    if (this.touch) {
      await this.page.touchscreen.touchStart(fromX, fromY);
      for (const part of steps)
        await this.page.touchscreen.touchMove(fromX + dx * part, fromY + dy * part);
      await this.page.touchscreen.touchEnd();
      return;
    }
    await this.page.mouse.move(fromX, fromY);
    await this.page.mouse.down();
    for (const part of steps) await this.page.mouse.move(fromX + dx * part, fromY + dy * part);
    await this.page.mouse.up();
  }

  private async hit(element: ElementHandle<HTMLElement>): Promise<void> {
    // what is greyed while the bench is at work is waited for
    await this.until('what is to be pressed stays greyed', () =>
      element.evaluateHandle((it) => ((it as HTMLButtonElement).disabled ? undefined : it)),
    );
    await element.evaluate((it) => it.scrollIntoView({block: 'nearest', inline: 'nearest'}));
    if (this.touch) await element.tap();
    else await element.click();
  }

  private async until(
    trouble: string,
    look: () => Promise<{asElement(): unknown}>,
  ): Promise<ElementHandle<HTMLElement>> {
    const end = Date.now() + patience;
    for (;;) {
      const element = (await look()).asElement() as ElementHandle<HTMLElement> | null;
      if (element) return element;
      if (Date.now() > end) throw new Error(`After ${patience / 1000} s ${trouble}.`);
      await settle();
    }
  }
}

/** A moment for the page to draw. */
export const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 60));
