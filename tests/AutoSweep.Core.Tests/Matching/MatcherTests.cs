using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Matching.Support;
using AutoSweep.Core.Tests.Support;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Core.Tests.Matching;

public sealed class MatcherTests
{
    [Theory]
    [InlineData(43, 300, 2)]
    [InlineData(43, 120, 3)]
    [InlineData(86, 2000, 2)]
    public void A_whole_generator_is_matched_and_proven(int outputs, int parts, int most)
    {
        var random = new Random(2026);
        var request = new MatchRequest(InventedShop.Targets(outputs, random), InventedShop.Parts(parts, random));

        var match = Match(request, new() { MostParts = most });

        Assert.True(match.IsProven);
        var used = match.Outputs.SelectMany(output => output.Combination?.Parts ?? []).Select(part => part.Id).ToList();
        Assert.Equal(used.Distinct(), used);
        Assert.Equal(used.Count, match.PartsUsed.Value);
        Assert.Equal(match.Outputs.Count(output => !output.WithinLimit), match.Outside.Value);
        Assert.Equal(match.Outputs.Sum(output => output.LossDecibels ?? 0), match.TotalLossDecibels, 5);
        Assert.All(match.Outputs.Where(output => output.WithinLimit), output => Assert.True(output.LossDecibels <= 0.05));
    }

    [Fact]
    public void The_same_seed_gives_the_same_match()
    {
        MatchResult Once()
        {
            var random = new Random(5);
            return Match(new(InventedShop.Targets(20, random), InventedShop.Parts(150, random)));
        }

        Assert.Equal(Picked(Once()), Picked(Once()));
    }

    [Fact]
    public void No_output_starves_because_others_come_first_and_more_is_looked_at_until_that_is_proven()
    {
        // Both outputs like P1 best; only the second can do without it. One combination kept for each is not enough to see that.
        var targets = new[] { Target(1, 100_000, 4_000), Target(2, 100_000, 8_000) };
        Part[] parts = [InventedShop.Part("P1", 100_000), InventedShop.Part("P2", 100_700)];

        var match = Match(new(targets, parts), new() { CandidatesPerOutput = 1 });

        Assert.Equal(["P1", "P2"], match.Outputs.Select(output => output.Combination!.Parts.Single().Id));
        Assert.True(match.Rounds > 1);
    }

    [Fact]
    public void Fewer_parts_come_before_less_loss()
    {
        var match = Match(new([Target(1, 100_000, 10_000)], [InventedShop.Part("P1", 100_500), InventedShop.Part("P2", 47_000),
            InventedShop.Part("P3", 53_000)]));

        Assert.Equal(["P1"], Picked(match)[1]);
    }

    [Fact]
    public void Matching_again_moves_no_part_for_less_loss_alone()
    {
        var targets = new[] { Target(1, 100_000, 10_000), Target(2, 100_100, 10_000) };
        Part[] parts = [InventedShop.Part("P1", 100_000), InventedShop.Part("P2", 100_100), InventedShop.Part("P3", 100_050)];
        var crossed = new Dictionary<int, IReadOnlyList<string>> { [1] = ["P2"], [2] = ["P1"] };

        var again = Match(new(targets, parts) { Earlier = crossed });
        var afresh = Match(new(targets, parts));

        Assert.Equal(0, again.Moved.Value);
        Assert.Equal(["P2"], Picked(again)[1]);
        Assert.Equal(["P1"], Picked(afresh)[1]);
    }

    [Fact]
    public void A_part_that_is_gone_moves_only_its_own_output()
    {
        var random = new Random(9);
        var (targets, parts) = (InventedShop.Targets(20, random), InventedShop.Parts(200, random));
        var first = Match(new(targets, parts));
        var gone = first.Outputs[7].Combination!.Parts[0].Id;

        var again = Match(new(targets, parts) { Excluded = new HashSet<string> { gone }, Earlier = Picked(first) });

        var changed = again.Outputs.Zip(first.Outputs).Where(pair => !Ids(pair.First).SequenceEqual(Ids(pair.Second)))
            .Select(pair => pair.First.Target.Output);
        Assert.Equal([first.Outputs[7].Target.Output], changed);
    }

    [Fact]
    public void A_part_of_too_low_or_unknown_voltage_is_not_used_where_a_voltage_is_required()
    {
        Part[] parts = [InventedShop.Part("P1", 100_000), InventedShop.Part("P2", 100_000) with { RatedVolts = 50 },
            InventedShop.Part("P3", 100_500) with { RatedVolts = 100 }];

        Assert.Equal(["P3"], Picked(Match(new([Target(1, 100_000, 10_000) with { RequiredVolts = 63 }], parts)))[1]);
    }

    [Theory]
    [InlineData("P9", "", "P9")]
    [InlineData("P1", "P1", "excluded")]
    public void A_pin_that_cannot_be_is_refused_by_name(string pinned, string excluded, string told)
    {
        var request = new MatchRequest([Target(1, 100_000, 10_000)], [InventedShop.Part("P1", 100_000)])
        {
            Pinned = new Dictionary<int, IReadOnlyList<string>> { [1] = [pinned] },
            Excluded = new HashSet<string> { excluded },
        };

        var fault = Assert.Throws<BenchFaultException>(() => Match(request));

        Assert.Equal(BenchFault.StockRefused, fault.Kind);
        Assert.Contains(told, fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_to_match_is_matched_at_once() => Assert.Empty(Match(new([], [])).Outputs);

    // OR-Library, generalized assignment, sets gap1 to gap3 and gap12 (J. E. Beasley); optima as published there.
    [Fact]
    public void The_packing_solver_reaches_every_published_optimum_of_the_assignment_problems()
    {
        foreach (var instance in AssignmentInstance.Read(Repository.Text("tests/Reference/or_library_gap.json")))
        {
            var solution = new PackingSolver(instance.AsPacking(), new() { TimeLimit = Unhurried.Limit }, TimeProvider.System)
                .Solve(CancellationToken.None)!;
            Assert.Equal(instance.KnownOptimum, -solution.Levels[0].Value);
            Assert.True(solution.Levels[0].IsProven);
        }
    }

    private static MatchTarget Target(int output, long picofarads, double halfWidth) =>
        new() { Output = output, Wanted = new(picofarads), HalfWidthPicofarads = halfWidth };

    private static MatchResult Match(MatchRequest request, MatchOptions? options = null) =>
        new Matcher((options ?? new()).WithoutHurry(), TimeProvider.System).Match(request, CancellationToken.None);

    private static IEnumerable<string> Ids(MatchedOutput output) => (output.Combination?.Parts ?? []).Select(part => part.Id);

    private static Dictionary<int, IReadOnlyList<string>> Picked(MatchResult match) =>
        match.Outputs.ToDictionary(output => output.Target.Output, output => (IReadOnlyList<string>)[.. Ids(output)]);
}
