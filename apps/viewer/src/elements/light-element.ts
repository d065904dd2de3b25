import { LitElement } from 'lit';

/** An element that renders into the page itself, so that one style sheet serves screen and print and labels reach everything. */
export class LightElement extends LitElement {
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  /** Tells the page about something by a bubbling event. */
  protected tell(name: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true }));
  }
}
