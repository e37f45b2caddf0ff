using AutoSweep.Core.Matching;

namespace AutoSweep.Core.Tests.Matching.Support;

/// <summary>A search that ends by itself. What a limit of time cuts off is another answer, and how soon it cuts is the machine's doing.</summary>
internal static class Unhurried
{
    internal static TimeSpan Limit { get; } = TimeSpan.FromMinutes(30);

    internal static MatchOptions WithoutHurry(this MatchOptions options) => options with { TimeLimit = Limit };
}
