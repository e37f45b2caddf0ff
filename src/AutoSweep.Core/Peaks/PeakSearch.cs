using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>The search for the capacitance at which an output is loudest, as a conversation: it asks for a reading and is told it.</summary>
/// <remarks>
/// It knows no relay, meter or clock, so a bench, a simulator and a journal being read again all drive it alike. The same readings give
/// the same answer, bit for bit. The first readings go where a net of possible peaks expects to learn most; from the third on every law
/// is fitted and readings go to the flanks. See docs/peak-search.md. Not for use by several threads at once.
/// </remarks>
public sealed class PeakSearch
{
    // In order: what ends or disturbs a search comes before its ordinary course.
    private static readonly Func<SearchState, SearchMove?>[] Rules =
    [
        LevelRule.Consider,
        FlatRule.Consider,
        EdgeRule.Consider,
        MisfitRule.Consider,
        RareLawRule.Consider,
        BoundRule.Consider,
    ];

    private readonly SearchState _state;
    private PeakStep? _next;

    /// <summary>Begins a search.</summary>
    /// <param name="prior">What is believed of the peak; its expected capacitance is the first reading.</param>
    /// <param name="options">The limits.</param>
    /// <exception cref="ArgumentException">The range is empty, or a spread, a Q or the budget is not above 0.</exception>
    public PeakSearch(PeakPrior prior, PeakSearchOptions options)
    {
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(options);
        SearchLimits.Check(prior, options);
        _state = new SearchState(prior, options);
    }

    /// <summary>What the search believes so far, for a live picture; none before it has a fit (three readings).</summary>
    public PeakFit? Current => _state.Mixture?.Summary();

    /// <summary>What the search wants next; the same until it is told a reading.</summary>
    public PeakStep Next() => _next ??= Step(Decide());

    /// <summary>Tells the search a reading, whether or not it is at the capacitance that was asked for.</summary>
    /// <param name="reading">What was read; the search uses the reading's own capacitance.</param>
    /// <exception cref="ArgumentException">The level is not a finite figure of 0 or more, the noise likewise, or the capacitance is not above 0.</exception>
    /// <exception cref="InvalidOperationException">The search is done.</exception>
    public void Tell(PeakReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        SearchLimits.Check(reading);
        if (_next is PeakStep.Done)
            throw new InvalidOperationException("The search is done; begin another for another peak.");
        _state.Tell(reading);
        _next = null;
    }

    private SearchMove Decide()
    {
        if (_state.Log.Told == 0)
            return PlanRule.Consider(_state);
        if (_state.Log.Told >= _state.Options.Budget)
            return LastWord();
        if (!_state.Log.Last.Settled)
            return SearchMove.Read(_state.Log.Last.Capacitance);
        foreach (var rule in Rules)
            if (rule(_state) is { } move)
                return move;
        return PlanRule.Consider(_state);
    }

    // With the last reading of the budget any rule may still end the search for its own reason.
    private SearchMove LastWord()
    {
        if (_state.Log.Last.Settled)
            foreach (var rule in Rules)
                if (rule(_state) is { Reason: not null } end)
                    return end;
        return SearchMove.Stop(_state.Mixture is { Misfits: true } ? PeakStopReason.ModelDoesNotHold : PeakStopReason.BudgetSpent);
    }

    private PeakStep Step(SearchMove move)
    {
        if (move.Reason is { } reason)
            return new PeakStep.Done(Answer.Of(_state, reason));
        var picofarads = Math.Clamp(move.Picofarads, _state.Options.Smallest.Picofarads, _state.Options.Largest.Picofarads);
        return new PeakStep.Read(Capacitance.FromPicofarads(picofarads));
    }
}
