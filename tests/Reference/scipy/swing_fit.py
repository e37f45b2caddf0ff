# numpy.linalg.lstsq of mean, cosine and sine, on made-up noisy samples.
import json, numpy as np
rng = np.random.default_rng(20260301)
cases = []
for hertz, depth, phase in ((16.3462, 0.012, 0.4), (21.8182, 0.15, 2.0), (24.4898, 0.07, 5.1), (30.8571, 0.02, 1.0)):
    t = np.arange(64) * 0.021
    y = 0.1 * (1 + depth * np.sin(2 * np.pi * hertz * t + phase)) + rng.normal(0, 0.00025, 64)
    y = np.array([float(f"{v:.8e}") for v in y])
    X = np.c_[np.ones(64), np.cos(2 * np.pi * hertz * t), np.sin(2 * np.pi * hertz * t)]
    b, rss, *_ = np.linalg.lstsq(X, y, rcond=None)
    cov = np.linalg.inv(X.T @ X) * rss[0] / 61
    cases.append(dict(hertz=hertz, samples=[float(v) for v in y], mean=b[0], depth=float(np.hypot(b[1], b[2]) / b[0]),
                      uncertainty=float(np.sqrt(max(cov[1, 1], cov[2, 2])) / b[0])))
json.dump(dict(source=f"numpy {np.__version__} linalg.lstsq (tests/Reference/scipy/swing_fit.py)", intervalSeconds=0.021, cases=cases),
          open("tests/Reference/scipy/swing_fit.json", "w"), indent=1)
