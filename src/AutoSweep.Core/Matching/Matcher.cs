namespace AutoSweep.Core.Matching;

/// <summary>Matches parts to outputs over the whole generator.</summary>
/// <remarks>
/// In this order: as few outputs as possible outside the loss limit, as few parts, as few parts moved since an earlier match, the
/// least total loss. An output for which the stock does not suffice gets no parts.
/// </remarks>
public sealed class Matcher(MatchOptions options, TimeProvider clock)
{
    // So much of the time may go by before the last look is taken with the combinations at hand.
    private const double ShareForProof = 0.6;

    /// <summary>Matches.</summary>
    /// <param name="request">The outputs, the parts, and what was decided by hand.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="BenchFaultException">What was pinned cannot be.</exception>
    public MatchResult Match(MatchRequest request, CancellationToken cancellationToken)
    {
        MatchRequestChecks.Check(request, options);
        var began = clock.GetTimestamp();
        var model = new MatchModel(request, options);
        for (var round = 1; ; round++)
        {
            var proof = Solve(model.Problem(withOthers: true), ShareForProof * Left(began), cancellationToken)!;
            var wanting = proof.Chosen.Select(choice => model.Choices[choice]).Where(choice => choice.Kind == MatchChoiceKind.Others)
                .ToList();
            if (wanting.Count == 0)
                return Result(request, model, proof.Chosen, proof.Levels, round);
            if (Left(began) < (1 - ShareForProof) * options.TimeLimit)
                return LastLook(request, model, proof, Left(began), round, cancellationToken);
            wanting.ForEach(model.Widen);
        }
    }

    private MatchResult LastLook(
        MatchRequest request, MatchModel model, PackingSolution proof, TimeSpan left, int round, CancellationToken cancellationToken)
    {
        var bounds = model.Problem(withOthers: true);
        var packing = Solve(model.Problem(withOthers: false), left, cancellationToken)!;
        List<LevelProof> levels = [];
        for (var level = 0; level < packing.Levels.Count; level++)
        {
            var asGoodBefore = levels.Zip(proof.Levels).All(pair => pair.First.Value == pair.Second.Value);
            levels.Add(new(packing.Levels[level].Value, asGoodBefore ? proof.Levels[level].Bound : bounds.Floor(level)));
        }

        return Result(request, model, packing.Chosen, levels, round);
    }

    private PackingSolution? Solve(PackingProblem problem, TimeSpan time, CancellationToken cancellationToken) =>
        new PackingSolver(problem, new() { Seed = options.Seed, TimeLimit = time }, clock).Solve(cancellationToken);

    private TimeSpan Left(long began) => options.TimeLimit - clock.GetElapsedTime(began);

    private MatchResult Result(MatchRequest request, MatchModel model, IReadOnlyList<int> chosen, IReadOnlyList<LevelProof> levels,
        int rounds)
    {
        var outputs = chosen.Select(index => Matched(request, model.Choices[index])).OrderBy(one => one.Target.Output);
        return request.Targets.Count == 0
            ? new([], new(0, 0), new(0, 0), new(0, 0), new(0, 0), 0, rounds)
            : new([.. outputs], levels[0], levels[1], levels[2], levels[3], model.Candidates, rounds);
    }

    private MatchedOutput Matched(MatchRequest request, MatchChoice choice)
    {
        var target = request.Targets[choice.Group];
        if (choice.Kind == MatchChoiceKind.Nothing)
            return new(target, null, null, false);
        var loss = LevelLoss.ToDecibels(choice.MeanSquare);
        return new(target, Combination.Of(choice.Places.Select(place => request.Parts[place])), loss, loss <= options.LossLimitDecibels
            + 1e-12);
    }
}
