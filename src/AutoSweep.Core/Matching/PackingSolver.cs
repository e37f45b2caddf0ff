using System.Globalization;
using Google.OrTools.Sat;

namespace AutoSweep.Core.Matching;

/// <summary>Solves a <see cref="PackingProblem"/> level by level with CP-SAT: each level's best is a constraint for the next.</summary>
/// <remarks>
/// One worker: several race each other, and who comes first decides between answers of equal cost. Everything goes into the linear
/// relaxation, which is all but whole-numbered for a match, and nothing is simplified first, which took longer than solving.
/// docs/matching.md has the measurements. A level may take half of the time that is left, the last one all of it.
/// </remarks>
public sealed class PackingSolver(PackingProblem problem, PackingOptions options, TimeProvider clock)
{
    private const string Parameters = "num_workers:1,cp_model_presolve:false,linearization_level:2";

    private readonly CpModel _model = new();
    private BoolVar[] _variables = [];
    private IReadOnlyList<int>? _best;

    /// <summary>Searches.</summary>
    /// <param name="cancellationToken">Stops between two levels.</param>
    /// <returns>The packing; none where there is none or none was found in time.</returns>
    public PackingSolution? Solve(CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        Build();
        _best = problem.FirstPacking();
        List<LevelProof> proofs = [];
        for (var level = 0; level < problem.Levels; level++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var left = options.TimeLimit - clock.GetElapsedTime(began);
            if (Improve(level, level == problem.Levels - 1 ? left : left / 2) is not { } proof)
                return null;
            proofs.Add(proof);
            _model.Add(Cost(level) <= proof.Value);
        }

        return new([.. _best!.OrderBy(choice => problem.Choices[choice].Group)], proofs);
    }

    private void Build()
    {
        _variables = [.. problem.Choices.Select((_, index) => _model.NewBoolVar($"c{index}"))];
        foreach (var group in problem.Choices.Zip(_variables).GroupBy(pair => pair.First.Group))
            _model.AddExactlyOne(group.Select(pair => pair.Second));
        var users = problem.Choices.Zip(_variables).SelectMany(pair => pair.First.Uses, (pair, use) => (pair.Second, use));
        foreach (var resource in users.GroupBy(user => user.use.Resource))
            Limit([.. resource], problem.Capacities[resource.Key]);
    }

    // "At most one" is said in its own words: the solver builds its cuts from it.
    private void Limit(IReadOnlyList<(BoolVar Variable, PackingUse Use)> users, long capacity)
    {
        if (capacity == 1 && users.All(user => user.Use.Amount == 1))
            _model.AddAtMostOne(users.Select(user => user.Variable));
        else
            _model.Add(LinearExpr.WeightedSum(users.Select(user => user.Variable), users.Select(user => user.Use.Amount)) <= capacity);
    }

    private LevelProof? Improve(int level, TimeSpan left)
    {
        var floor = problem.Floor(level);
        if (_best is not null && problem.Cost(_best, level) == floor)
            return new(floor, floor);
        _model.Minimize(Cost(level));
        Hint();
        var seconds = Math.Max(0.01, left.TotalSeconds);
        var solver = new CpSolver
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture, $"{Parameters},random_seed:{options.Seed},max_time_in_seconds:{seconds}"),
        };
        var status = solver.Solve(_model);
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
            _best = [.. Enumerable.Range(0, _variables.Length).Where(index => solver.BooleanValue(_variables[index]))];
        else if (_best is null)
            return null;
        // Costs are whole numbers, so a bound between two of them is the upper one.
        return new(problem.Cost(_best, level), Math.Max(floor, (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6)));
    }

    private void Hint()
    {
        _model.ClearHints();
        if (_best is null)
            return;
        var chosen = _best.ToHashSet();
        for (var index = 0; index < _variables.Length; index++)
            _model.AddHint(_variables[index], chosen.Contains(index));
    }

    private LinearExpr Cost(int level) => LinearExpr.WeightedSum(_variables, problem.Choices.Select(choice => choice.Costs[level]));
}
