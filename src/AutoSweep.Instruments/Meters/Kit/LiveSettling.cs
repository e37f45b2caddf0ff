namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>Measures how long the AC detector takes to settle after a change of range, which empties it, and compares with the driver
/// file.</summary>
internal sealed class LiveSettling(ScpiLevelMeter meter, MeterDriver driver, TimeProvider time)
{
    // Read until so many settling times have passed; what comes after one and a half of them is the settled level.
    private const double Watched = 2.5;
    private const double Settled = 1.5;

    // A file may say far too little, so the detector is given what its bandwidth takes in any case: 20 periods of the lowest frequency
    // that it passes (7 s at 3 Hz, 1 s at 20 Hz, 0.1 s at 200 Hz: the maker's AC speed tip for the 34401A).
    private const double Periods = 20;

    // Settled is within 0.1 % of the last level, or within four standard deviations of the noise where that is more: about one reading
    // in sixteen thousand is outside by chance.
    private const double Band = 0.001;
    private const double Deviations = 4;

    // So that the noise is known to a third.
    private const int FewestAfter = 5;

    /// <summary>Measures one bandwidth.</summary>
    /// <param name="bandwidth">The bandwidth.</param>
    /// <param name="volts">The level at the input in volts rms.</param>
    /// <param name="cancellationToken">Ends it.</param>
    public async Task<LiveCheckRow> MeasureAsync(DriverBandwidth bandwidth, double volts, CancellationToken cancellationToken)
    {
        var what = FormattableString.Invariant($"settling, {bandwidth.Hertz} Hz");
        if (driver.Level!.RangesVolts.Count < 2)
            return LiveCheckRow.NotChecked(what, "it takes a change of range, and the driver has one range only");
        var readings = await WatchAsync(bandwidth, volts, cancellationToken);
        var after = readings.Where(reading => reading.Seconds >= Math.Max(Settled * meter.Settling.TotalSeconds, Periods / bandwidth.Hertz)).Select(reading => reading.Volts).ToList();
        if (after.Count < FewestAfter)
            return LiveCheckRow.NotChecked(what, "too few readings came back as values");
        var (last, band) = (after.Average(), Math.Max(Band * after.Average(), Deviations * LiveLevelCheck.Spread(after)));
        var outside = readings.FindLastIndex(reading => Math.Abs(reading.Volts - last) > band);
        var settled = readings[Math.Min(outside + 1, readings.Count - 1)].Seconds;
        return LiveCheckRow.Judged(what,
            FormattableString.Invariant($"within {100 * band / last:0.00} % after {settled:0.00} s, {readings.Count} readings"),
            FormattableString.Invariant($"at most {meter.Settling.TotalSeconds} s, as the file says"), settled <= meter.Settling.TotalSeconds,
            FormattableString.Invariant($"write at least {settled:0.0} s into the file, or look at the tone: it must be steady"));
    }

    // The wide range first: going back to the right one sends the whole set-up again.
    private async Task<List<(double Seconds, double Volts)>> WatchAsync(DriverBandwidth bandwidth, double volts, CancellationToken cancellationToken)
    {
        await meter.PrepareLevelAsync(driver.Level!.RangesVolts[^1], bandwidth.FromToneHertz, cancellationToken);
        await meter.ReadLevelAsync(cancellationToken);
        await meter.PrepareLevelAsync(volts, bandwidth.FromToneHertz, cancellationToken);
        var began = time.GetTimestamp();
        List<(double, double)> readings = [];
        var watched = TimeSpan.FromSeconds(Math.Max(Watched * meter.Settling.TotalSeconds, Watched / Settled * Periods / bandwidth.Hertz));
        for (var count = 0; time.GetElapsedTime(began) < watched || count < 2 * FewestAfter; count++)
            if (await meter.ReadUnsettledAsync(cancellationToken) is { Kind: MeterReadingKind.Value } reading)
                readings.Add((time.GetElapsedTime(began).TotalSeconds, reading.Value));
        return readings;
    }
}
