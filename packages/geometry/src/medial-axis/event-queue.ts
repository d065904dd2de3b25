/**
 * Items by least key first: a binary heap that holds keys beside items, so that sifting reads no other memory. Entries are not taken back:
 * whoever pops has to know whether the entry still counts.
 */
export class EventQueue {
  #item: Int32Array = new Int32Array(64);
  #key: Float64Array = new Float64Array(64);
  #size = 0;
  /** Key of the item popped last. */
  poppedKey = 0;

  push(item: number, key: number): void {
    if (this.#size === this.#item.length) {
      this.#grow();
    }
    const items = this.#item;
    const keys = this.#key;
    let at = this.#size++;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (keys[parent] <= key) {
        break;
      }
      items[at] = items[parent];
      keys[at] = keys[parent];
      at = parent;
    }
    items[at] = item;
    keys[at] = key;
  }

  /** Takes out the item with the least key, -1 if there is none. */
  pop(): number {
    if (this.#size === 0) {
      return -1;
    }
    const top = this.#item[0];
    this.poppedKey = this.#key[0];
    this.#size--;
    if (this.#size > 0) {
      this.#sink(this.#item[this.#size], this.#key[this.#size]);
    }
    return top;
  }

  /** Forgets all items. */
  clear(): void {
    this.#size = 0;
  }

  #sink(item: number, key: number): void {
    const items = this.#item;
    const keys = this.#key;
    const size = this.#size;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= size) {
        break;
      }
      if (child + 1 < size && keys[child + 1] < keys[child]) {
        child++;
      }
      if (keys[child] >= key) {
        break;
      }
      items[at] = items[child];
      keys[at] = keys[child];
      at = child;
    }
    items[at] = item;
    keys[at] = key;
  }

  #grow(): void {
    const item = new Int32Array(2 * this.#size);
    const key = new Float64Array(2 * this.#size);
    item.set(this.#item);
    key.set(this.#key);
    this.#item = item;
    this.#key = key;
  }
}
