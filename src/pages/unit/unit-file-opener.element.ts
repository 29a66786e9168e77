import {customElement} from 'lit/decorators.js';
import {openAttempts} from '../../store/attempts.ts';
import {goTo} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import type {FileMistake} from '../desk/desk-messages.ts';
import {FileOpener} from '../own-files/file-opener.ts';

/**
 * Opens a unit file from disk, lists its mistakes or keeps it on this device and goes to its sheet.
 * @event unit-kept - A file without mistakes was kept.
 */
@customElement('rb-unit-file-opener')
export class RbUnitFileOpener extends FileOpener {
  protected override readonly what = 'unit file';

  protected override async keep(fileName: string, text: string): Promise<readonly FileMistake[]> {
    const {unit, mistakes} = await desk().load({text, fileName});
    if (!unit) return mistakes;
    const shipped = await desk().ask('shippedIds', {});
    if (shipped.includes(unit.id)) {
      throw new Error(
        `The unit's id "${unit.id}" is one that comes with Rungbench. Give yours another id in its first lines.`,
      );
    }
    const store = await openAttempts();
    await store.putUnit({
      id: unit.id,
      title: unit.title,
      fileName,
      text,
      keptAt: new Date().toISOString(),
    });
    this.dispatchEvent(new CustomEvent('unit-kept', {detail: {id: unit.id}}));
    goTo({page: 'unit', unit: unit.id});
    return [];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unit-file-opener': RbUnitFileOpener;
  }
}
