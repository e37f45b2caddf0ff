using AutoSweep.Core.Generator;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Matching.Support;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Core.Tests.Matching;

public sealed class MatcherAgainstBruteForceTests
{
    // 500 seeded cases in 10 batches, so that a failure names a short list.
    [Theory]
    [InlineData(0), InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6), InlineData(7), InlineData(8),
        InlineData(9)]
    public void Small_matches_equal_the_best_of_all_that_there_are(int batch)
    {
        for (var seed = 50 * batch; seed < 50 * (batch + 1); seed++)
        {
            var (request, options) = Case(new Random(seed));

            var match = new Matcher(options.WithoutHurry(), TimeProvider.System).Match(request, CancellationToken.None);

            var best = new BruteForce(request, options).Best();
            Assert.True(match.IsProven, $"seed {seed}");
            Assert.True(best == (match.Outside.Value, match.PartsUsed.Value, match.Moved.Value, match.TotalLoss.Value),
                $"seed {seed}: {best} is better than {match}");
            AssertHonest(request, match);
        }
    }

    // Few and crowded parts, so that outputs fight for them; a wide loss limit, so that there is a choice; sometimes pins, exclusions and
    // an earlier match.
    private static (MatchRequest, MatchOptions) Case(Random random)
    {
        var targets = Enumerable.Range(1, random.Next(1, 4)).Select(output => new MatchTarget
        {
            Output = output,
            Wanted = new(random.Next(90_000, 110_000)),
            HalfWidthPicofarads = random.Next(5_000, 20_000),
            SdPicofarads = random.Next(0, 500),
            Law = random.Next(2) == 0 ? ResponseLaw.Series : ResponseLaw.Shunt,
        }).ToList();
        var parts = Enumerable.Range(1, random.Next(2, 8)).Select(number => InventedShop.Part(
            $"P{number}", random.Next(3) == 0 ? random.Next(90_000, 110_000) : random.Next(30_000, 70_000), random.Next(0, 200))).ToList();
        var request = new MatchRequest(targets, parts)
        {
            Pinned = random.Next(4) == 0 ? new Dictionary<int, IReadOnlyList<string>> { [1] = ["P1"] } : new Dictionary<int,
                IReadOnlyList<string>>(),
            Excluded = random.Next(4) == 0 ? ["P2"] : new HashSet<string>(),
            Earlier = random.Next(2) == 0 ? new Dictionary<int, IReadOnlyList<string>> { [1] = [$"P{random.Next(1, 4)}"] }
                : new Dictionary<int, IReadOnlyList<string>>(),
        };
        return (request, new() { LossLimitDecibels = random.Next(2) == 0 ? 0.05 : 1, MostParts = random.Next(1, 4),
            CandidatesPerOutput = random.Next(1, 4) });
    }

    private static void AssertHonest(MatchRequest request, MatchResult match)
    {
        var used = match.Outputs.SelectMany(output => output.Combination?.Parts ?? []).Select(part => part.Id).ToList();
        Assert.Equal(used.Distinct(), used);
        Assert.Equal(request.Targets.Count, match.Outputs.Count);
        Assert.DoesNotContain(used, request.Excluded.Contains);
        Assert.All(match.Outputs.Where(output => output.Combination is not null), output => Assert.Equal(
            new LevelLoss(output.Target).Decibels(output.Combination!.Sum.Picofarads, output.Combination.Variance),
                output.LossDecibels!.Value, 12));
    }
}
