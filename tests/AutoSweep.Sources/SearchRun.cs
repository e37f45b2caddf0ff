using AutoSweep.Core.Peaks;

namespace AutoSweep.Sources;

/// <summary>Drives a search through a source to its end.</summary>
public static class SearchRun
{
    /// <summary>The answer that the search gives for a source.</summary>
    public static PeakResult Of(RandomSource source) => Of(source, source.Prior);

    /// <summary>The answer with another belief beforehand.</summary>
    public static PeakResult Of(RandomSource source, PeakPrior prior)
    {
        var bench = source.Bench();
        var search = new PeakSearch(prior, RandomSource.Options);
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

    /// <summary>The answers for a group's outputs in order, each with what the earlier ones taught.</summary>
    public static IReadOnlyList<SearchOutcome> OfGroup(IReadOnlyList<RandomSource> outputs)
    {
        var knowledge = GroupKnowledge.None;
        var outcomes = new List<SearchOutcome>();
        foreach (var source in outputs)
        {
            var result = Of(source, knowledge.PriorFor(source.Prior.Expected));
            knowledge = knowledge.Learn(result, source.Prior.Expected);
            outcomes.Add(new(source, result));
        }
        return outcomes;
    }
}
