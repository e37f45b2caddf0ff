using AutoSweep.Core.Generator;

namespace AutoSweep.Worker.Page.Jobs;

/// <summary>A generator that a new job can be begun with.</summary>
/// <param name="Key">Tells it from the others on the page.</param>
/// <param name="Profile">The generator.</param>
/// <param name="IsOwn">Whether it is a file of the shop's; otherwise it is shipped with the program.</param>
public sealed record ProfileChoice(string Key, GeneratorProfile Profile, bool IsOwn)
{
    /// <summary>What the list shows.</summary>
    public string Label => $"{Profile.Name}{(Profile.Invented ? " (invented, for practice)" : "")}{(IsOwn ? " (own file)" : "")}";
}
