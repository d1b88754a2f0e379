import assert from 'node:assert/strict';
import {
  plusMinus,
  shownExpanded,
  shownValue,
  shownWindow,
  stateAndReasons,
} from '../../server/src/presentation/shown';
import { celsius, failedResult, plain, requirement, result } from './snapshots';

describe('a shown value', () => {
  it('has its standard uncertainty, unit and basis, rounded at the second digit of u', () => {
    assert.equal(shownValue(result()), '14.797 ± 0.041 % (initial)');
    assert.equal(shownValue(result({ basis: 'dried, Moisture' })), '14.797 ± 0.041 % (dried, Moisture)');
    assert.equal(
      shownValue(result({ value: 742.3104, uncertainty: 0.38, unit: celsius, basis: null })),
      '742.31 ± 0.38 °C',
    );
  });

  it('shows no ± where it is exact, and a ? where the uncertainty is not known', () => {
    assert.equal(shownValue(result({ value: 2, uncertainty: 0, unit: plain, basis: null })), '2');
    assert.equal(plusMinus(742.31, null), '742.3 ± ?');
  });

  it('is a limit where nothing was detected, and words where there is no value', () => {
    assert.equal(
      shownValue(failedResult({ state: 'not-detected', limit: 0.0512, basis: 'initial mass' })),
      '< 0.051 % (initial)',
    );
    assert.equal(shownValue(failedResult()), 'failed');
    assert.equal(stateAndReasons(failedResult()), 'failed: window-empty');
    assert.equal(stateAndReasons(result()), '');
  });

  it('prints U = k·u with its k beside a verdict, never as ±', () => {
    assert.equal(shownExpanded(requirement()), 'U = 0.16 % (k = 2)');
    assert.equal(shownExpanded(requirement({ k: 2.776 })), 'U = 0.23 % (k = 2.78)');
    assert.equal(shownExpanded(requirement({ uncertainty: 0 })), 'exact');
    assert.equal(shownExpanded(requirement({ uncertainty: null })), 'U unknown');
  });

  it('has its window as written, or with the rule that found it', () => {
    assert.equal(shownWindow({ from: 640, to: 790.25, unit: '°C', rule: null }), '640..790.25 °C');
    assert.equal(
      shownWindow({ from: 879.7312, to: 951.09, unit: '°C', rule: 'around 930 °C' }),
      '879.7..951.1 °C (around 930 °C)',
    );
  });
});
