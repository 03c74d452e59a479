/** A file or a call that is not what it should be, with the place. Thrown by the readers of this shell alone and caught where the command begins. */
export class OutsideFault extends Error {
  constructor(place: string, what: string) {
    super(place === '' ? what : `${place}: ${what}`);
    this.name = 'OutsideFault';
  }
}

/** Not decided: the steps ran out. Nothing is claimed. */
export class OutsideStopped extends Error {
  constructor(what: string) {
    super(what);
    this.name = 'OutsideStopped';
  }
}
