using System.Collections.Immutable;
using AutoSweep.Core;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Discovery;
using AutoSweep.Instruments.Links;
using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>Looks for instruments on this computer and, where a person agreed to it, asks who is there.</summary>
/// <param name="search">Where to look.</param>
/// <param name="options">With what to ask.</param>
/// <param name="asked">The one address to ask, which cannot be found by looking; none to look for all that there are.</param>
/// <param name="ask">Whether those that are found are sent <c>*IDN?</c>.</param>
public sealed class InstrumentHunt(InstrumentSearch search, InstrumentBenchOptions options, string? asked, bool ask) : DeskWork
{
    /// <inheritdoc/>
    public override string Name => "Search for instruments";

    /// <inheritdoc/>
    public override string? Place => "wiring";

    /// <summary>What was found.</summary>
    public ImmutableList<FoundResource> Found { get; private set; } = [];

    /// <summary>What was answered, by resource.</summary>
    public ImmutableDictionary<string, InquiryResult> Answers { get; private set; } = ImmutableDictionary<string, InquiryResult>.Empty;

    /// <summary>What could not be searched, and why.</summary>
    public ImmutableList<string> Notes { get; private set; } = [];

    /// <inheritdoc/>
    /// <exception cref="BenchFaultException">The typed address is none.</exception>
    protected override async Task WorkAsync(CancellationToken cancellationToken)
    {
        var found = asked is { } typed
            ? new([new(ResourceName.Parse(typed).Text, "as typed")], [])
            : await search.FindAsync(cancellationToken);
        (Found, Notes) = ([.. found.Resources], [.. found.Notes]);
        Tell();
        if (!ask)
            return;
        var inquiry = new InstrumentInquiry(options);
        foreach (var one in Found)
        {
            Answers = Answers.SetItem(one.Resource, await inquiry.AskAsync(one.Resource, cancellationToken));
            Tell();
        }
    }
}
