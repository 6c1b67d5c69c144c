// One figure of the lessons on another page: <clampwright-figure figure="hollow" turn="180" units="metric">.
//
//   <script type="module" src="https://…/api/figure.js"></script>
//
// It shows embed.html in a frame as wide as the element and as high as the figure then is. Every attribute but the
// element's own goes along as a setting.

const HERE = new URL('../embed.html', import.meta.url);

/** Attributes that mean the element itself. */
const OWN = new Set(['id', 'class', 'style', 'title', 'slot', 'hidden', 'lang', 'dir', 'tabindex', 'role']);

class ClampwrightFigure extends HTMLElement {
  static observedAttributes = ['figure', 'units', 'look', 'title'];

  #frame = document.createElement('iframe');

  #sized = ({ source, origin, data }) => {
    if (source !== this.#frame.contentWindow || origin !== HERE.origin) return;
    if (data?.clampwright !== 'height' || !(data.height > 0)) return;
    this.#frame.height = String(Math.ceil(data.height));
  };

  constructor() {
    super();
    // No style sheet of its own is needed, so no content policy can refuse one.
    this.#frame.width = '100%';
    this.#frame.height = '480';
    this.#frame.loading = 'lazy';
    this.#frame.setAttribute('frameborder', '0');
  }

  connectedCallback() {
    addEventListener('message', this.#sized);
    this.#show();
    const root = this.shadowRoot ?? this.attachShadow({ mode: 'open' });
    root.replaceChildren(this.#frame);
  }

  disconnectedCallback() {
    removeEventListener('message', this.#sized);
  }

  attributeChangedCallback() {
    if (this.isConnected) this.#show();
  }

  #show() {
    const address = new URL(HERE);
    for (const { name, value } of this.attributes) {
      if (!OWN.has(name) && !/^(aria|data|on)/.test(name)) address.searchParams.set(name, value);
    }
    this.#frame.title = this.getAttribute('title') ?? 'Figure of a bolted joint';
    if (this.#frame.src !== address.href) this.#frame.src = address.href;
  }
}

// A page may load it twice.
if (!customElements.get('clampwright-figure')) customElements.define('clampwright-figure', ClampwrightFigure);
