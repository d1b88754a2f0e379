import { ofFamily } from '../record';

/** Names that point nowhere, twice, or at themselves. What carries the name fails, and silently what needs it. */
export const nameRecords = ofFamily('names', false, [
  {
    code: 'unknown-name',
    severity: 'error',
    effect: 'fails',
    title: 'No statement has this name',
    explanation:
      'The name is defined neither in the gloss nor in its method. The expression has no value. Correct the spelling (capitals matter), or write the statement.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nlet loss = Frist.loss',
    silent: 'run "a.csv"\nstep First 640..800 °C\nlet loss = First.loss',
  },
  {
    code: 'unknown-quantity',
    severity: 'error',
    effect: 'fails',
    title: 'A statement of this kind has no such quantity',
    explanation:
      'Each kind of evaluation gives its own quantities; a step has `loss`, a peak has `enthalpy`. In a hold only the `…_time` twins of temperatures exist. Choose one of the quantities named in the message.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nlet h = First.enthalpy',
    silent: 'run "a.csv"\nstep First 640..800 °C\nlet l = First.loss',
  },
  {
    code: 'quantity-missing',
    severity: 'error',
    effect: 'fails',
    title: 'The statement is named, but not which of its quantities',
    explanation:
      'One evaluation gives several quantities, and a glass transition alone has four temperatures that differ by kelvins. A number is only comparable when its definition is named: write it after a dot, as in `Tg.midpoint`.',
    limits: [],
    rules: ['G01'],
    fires: 'run "a.csv"\n  endothermic up\nglass Tg 60..95 °C\nrequire Tg in 75..85 °C',
    silent: 'run "a.csv"\n  endothermic up\nglass Tg 60..95 °C\nrequire Tg.midpoint in 75..85 °C',
  },
  {
    code: 'name-twice',
    severity: 'error',
    effect: 'fails',
    title: 'A name is defined twice',
    explanation:
      'Names of the gloss, its method, the parts of sums and `as` share one list. The first definition stands, the second fails. Rename one, or write `override` where the method is meant to be changed.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nstep First 800..950 °C',
    silent: 'run "a.csv"\nstep First 640..800 °C\nstep Second 800..950 °C',
  },
  {
    code: 'cycle',
    severity: 'error',
    effect: 'fails',
    title: 'A value is defined by itself',
    explanation:
      'The definitions named in the message need each other, so none of them has a value. Express one of them by something measured.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nlet a = b * 2\nlet b = a / 2',
    silent: 'run "a.csv"\nlet a = 2 %\nlet b = a / 2',
  },
  {
    code: 'given-missing',
    severity: 'error',
    effect: 'fails',
    title: 'The method asks for a value that the gloss does not give',
    explanation:
      'The method names a value that only the run can know, such as a share of polymer. Whatever uses it fails until the gloss has a `let` with that name.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\nmethod "m.gloss"', 'the method holds `given polymer in %`'],
    silent: ['run "a.csv"\nmethod "m.gloss"\nlet polymer = 97.2 %', 'the method holds `given polymer in %`'],
  },
  {
    code: 'override-of-nothing',
    severity: 'error',
    effect: 'fails',
    title: 'There is nothing of that name to override',
    explanation:
      'An `override` changes a statement of the method; the method has none of this kind and name, or it is a limit, which no gloss may change. Correct the name, or drop the word `override`.',
    limits: [],
    rules: [],
    fires: [
      'run "a.csv"\nmethod "m.gloss"\noverride step Frist 655..805 °C\n  because "coarse"',
      'the method has `step First`',
    ],
    silent: [
      'run "a.csv"\nmethod "m.gloss"\noverride step First 655..805 °C\n  because "coarse"',
      'the method has `step First`',
    ],
  },
  {
    code: 'override-without-reason',
    severity: 'error',
    effect: 'fails',
    title: 'An override gives no reason',
    explanation:
      'A run that departs from its method is compared with its neighbours; a reader must see why it was evaluated otherwise. Add `because "…"`.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\nmethod "m.gloss"\noverride step First 655..805 °C', 'the method has `step First`'],
    silent: [
      'run "a.csv"\nmethod "m.gloss"\noverride step First 655..805 °C\n  because "coarse"',
      'the method has `step First`',
    ],
  },
  {
    code: 'confusing-name',
    severity: 'note',
    effect: null,
    title: 'A name can be taken for something else',
    explanation:
      'The name is spelled like a unit, or differs from another name by capitals only. It works, but `12 mg` and `12 * mg` are then different things to the program and nearly the same to a reader. Consider another name.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nlet mg = 20.3 %',
    silent: 'run "a.csv"\nlet magnesia = 20.3 %',
  },
]);
