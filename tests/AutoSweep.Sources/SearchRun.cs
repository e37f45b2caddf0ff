using AutoSweep.Core.Peaks;

namespace AutoSweep.Sources;

/// <summary>Drives a search through a source to its end.</summary>
public static class SearchRun
{
    /// <summary>The answer that the search gives for a source.</summary>
    public static PeakResult Of(RandomSource source)
    {
        var bench = source.Bench();
        var search = new PeakSearch(source.Prior, RandomSource.Options);
        while (true)
        {
            switch (search.Next())
            {
                case PeakStep.Read read:
                    search.Tell(bench.Read(read.Capacitance));
                    break;
                case PeakStep.Done done:
                    return done.Result;
            }
        }
    }
}
