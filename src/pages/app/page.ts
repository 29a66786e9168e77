import type {TemplateResult} from 'lit';

/** How one route is shown. Its code is fetched when it is first needed, so that the first view stays small. */
export interface Page {
  /** Title of the document and of the sheet; a page may say a better one with a `page-title` event. */
  readonly title: string;
  /** Which entry of the header's navigation it belongs to. */
  readonly within?: 'home' | 'history' | 'about' | 'class';
  /** Takes the whole window, without the sheet's frame. */
  readonly wide?: boolean;
  /** Without the header too: nothing but the page, for a projector. */
  readonly bare?: boolean;
  /** What is done here is kept by a class's server, not on this device. */
  readonly onServer?: boolean;
  load(): Promise<unknown>;
  render(): TemplateResult;
}
