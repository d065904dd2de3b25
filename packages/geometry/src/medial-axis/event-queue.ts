/** Items by least key first, where the key of a waiting item may change: a binary heap with positions. */
export class EventQueue {
  readonly #heap: Int32Array;
  readonly #position: Int32Array;
  readonly #key: Float64Array;
  #size = 0;

  /** @param capacity number of items; items are 0 … capacity − 1 */
  constructor(capacity: number) {
    this.#heap = new Int32Array(capacity);
    this.#position = new Int32Array(capacity).fill(-1);
    this.#key = new Float64Array(capacity);
  }

  get size(): number {
    return this.#size;
  }

  /** Adds an item or moves it to its new key. */
  set(item: number, key: number): void {
    let at = this.#position[item];
    const old = this.#key[item];
    this.#key[item] = key;
    if (at < 0) {
      at = this.#size++;
      this.#rise(at, item, key);
    } else if (key < old) {
      this.#rise(at, item, key);
    } else {
      this.#sink(at, item, key);
    }
  }

  /** Takes out the item with the least key. */
  pop(): number {
    const top = this.#heap[0];
    this.#position[top] = -1;
    this.#size--;
    if (this.#size > 0) {
      const last = this.#heap[this.#size];
      this.#sink(0, last, this.#key[last]);
    }
    return top;
  }

  /** Forgets all items. */
  clear(): void {
    for (let k = 0; k < this.#size; k++) {
      this.#position[this.#heap[k]] = -1;
    }
    this.#size = 0;
  }

  #rise(from: number, item: number, key: number): void {
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const other = this.#heap[parent];
      if (this.#key[other] <= key) {
        break;
      }
      this.#heap[at] = other;
      this.#position[other] = at;
      at = parent;
    }
    this.#heap[at] = item;
    this.#position[item] = at;
  }

  #sink(from: number, item: number, key: number): void {
    let at = from;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.#size) {
        break;
      }
      if (child + 1 < this.#size && this.#key[this.#heap[child + 1]] < this.#key[this.#heap[child]]) {
        child++;
      }
      const other = this.#heap[child];
      if (this.#key[other] >= key) {
        break;
      }
      this.#heap[at] = other;
      this.#position[other] = at;
      at = child;
    }
    this.#heap[at] = item;
    this.#position[item] = at;
  }
}
