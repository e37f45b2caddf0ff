using System.Globalization;
using Google.OrTools.Sat;

namespace AutoSweep.Core.Matching;

/// <summary>Covers every output with one way to cure it, opening as few values as possible and then buying as few pieces.</summary>
internal sealed class BuyingModel(IReadOnlyList<BuyingOption> ways, int seed)
{
    // One more value outweighs all the pieces that it could save.
    private const int ValueWeight = 10_000;

    // Advice, not a proof: the best found in this time is good enough. The usual case takes milliseconds.
    private const double LimitSeconds = 5;

    private readonly CpModel _model = new();

    public IReadOnlyList<BuyingOption> Choose()
    {
        if (ways.Count == 0)
            return [];
        BoolVar[] taken = [.. ways.Select((_, index) => _model.NewBoolVar($"w{index}"))];
        var pairs = ways.Zip(taken).ToList();
        foreach (var output in pairs.GroupBy(pair => pair.First.Output))
            _model.AddExactlyOne(output.Select(pair => pair.Second));
        foreach (var part in pairs.Where(pair => pair.First.Beside is not null).GroupBy(pair => pair.First.Beside))
            _model.AddAtMostOne(part.Select(pair => pair.Second));
        var values = pairs.GroupBy(pair => (pair.First.Series, pair.First.NominalPicofarads)).Select(Open).ToList();
        _model.Minimize((ValueWeight * LinearExpr.Sum(values)) + LinearExpr.WeightedSum(taken, ways.Select(way => (long)way.Pieces)));
        var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture,
            $"num_workers:1,random_seed:{seed},max_time_in_seconds:{LimitSeconds}") };
        return solver.Solve(_model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? [.. pairs.Where(pair => solver.BooleanValue(pair.Second)).Select(pair => pair.First)]
            : [];
    }

    private BoolVar Open(IEnumerable<(BuyingOption First, BoolVar Second)> users)
    {
        var open = _model.NewBoolVar("");
        foreach (var user in users)
            _model.AddImplication(user.Second, open);
        return open;
    }
}
