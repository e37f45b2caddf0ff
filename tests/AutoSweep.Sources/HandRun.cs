using AutoSweep.Core.Peaks;

namespace AutoSweep.Sources;

/// <summary>A sweep by hand of one source, to its end.</summary>
public static class HandRun
{
    /// <summary>Sweeps a source.</summary>
    /// <param name="source">The source.</param>
    /// <param name="how">What is known of the box.</param>
    public static HandOutcome Of(RandomSource source, BoxKnowledge how)
    {
        // Every source has its own box: one good box must not carry the figures.
        var box = new HandBox(HandBox.OnePercent, unchecked(source.Seed * 31 + 7));
        var described = how == BoxKnowledge.CalibratedOnce ? box.Measured(0.0005, new(unchecked(source.Seed * 17 + 3))) : box.Description;
        var bench = new HandBench(source, box, described);
        var search = new PeakSearch(source.Prior, PeakSearchOptions.ByHand(described));
        while (search.Next() is PeakStep.Read read)
            search.Tell(bench.Read(read.Capacitance));
        var result = ((PeakStep.Done)search.Next()).Result;
        return new(source, Final(result, how, bench, described), bench.Dialings, bench.Turns);
    }

    private static PeakResult Final(PeakResult result, BoxKnowledge how, HandBench bench, Core.Decades.DecadeBox described)
    {
        if (how != BoxKnowledge.MeasuredAtTheEnd)
            return DialledPeak.Unmeasured(result, described);
        var (shown, sd) = bench.Measure();
        return DialledPeak.Measured(result, described.Total(bench.Now!), shown, sd);
    }
}
