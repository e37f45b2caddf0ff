namespace AutoSweep.Core.Peaks;

/// <summary>All that the rules of a search look at.</summary>
internal sealed class SearchState
{
    // Below three readings the net alone decides: a fit would lean on its beliefs.
    private const int FewestToFit = 3;

    // Settling and three samples of a usual meter; it only places the next reading in the drift.
    private static readonly TimeSpan UsualReading = TimeSpan.FromSeconds(2);

    // Turning dials, looking, typing (common practice, no source).
    private static readonly TimeSpan UsualDialing = TimeSpan.FromMinutes(1);

    internal SearchState(PeakPrior prior, PeakSearchOptions options)
    {
        Prior = prior;
        Options = options;
        Grid = new PeakGrid(prior);
    }

    internal PeakPrior Prior { get; }

    internal PeakSearchOptions Options { get; }

    internal PeakGrid Grid { get; }

    internal ReadingLog Log { get; } = new();

    /// <summary>The fits to the readings that count; none while they are too few or no law can be fitted.</summary>
    internal LawMixture? Mixture { get; private set; }

    internal double NextMinutes => (Log.Last.At + (Options.Box is null ? UsualReading : UsualDialing)).TotalMinutes;

    internal double Noise => Math.Max(Log.TypicalNoise(), SlowEffects.LeastRelativeNoise);

    internal void Tell(PeakReading reading)
    {
        Log.Add(reading);
        if (!Log.Trace[^1].Used)
            return;
        Grid.Tell(Log.LastPoint);
        Refit();
    }

    internal void SetAside(int position)
    {
        Log.SetAside(position);
        Grid.Forget();
        foreach (var point in Log.Points())
            Grid.Tell(point);
        Refit();
    }

    /// <summary>The fits as they would be without one of the readings.</summary>
    internal LawMixture? MixtureWithout(int position) => Fit(Log.Points(without: position));

    private void Refit() => Mixture = Fit(Log.Points());

    private LawMixture? Fit(FitPoint[] points)
    {
        if (points.Length < FewestToFit)
            return null;
        var mixture = LawFitter.Fit(Grid, points, Prior, Mixture);
        if (Options.Box is { } box && mixture.Fits.Count > 0)
            mixture = LawFitter.Fit(Grid, DialError.Widen(points, mixture, box), Prior, mixture);
        return mixture.Fits.Count == 0 ? null : mixture;
    }
}
