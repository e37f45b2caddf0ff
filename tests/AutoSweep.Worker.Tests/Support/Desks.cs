using AutoSweep.Worker.Page.Work;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Desks with nothing on them.</summary>
internal static class Desks
{
    public static Desk In(TemporaryFolder folder) => new(new() { Data = folder.Path }, NullLoggerFactory.Instance, TimeProvider.System);
}
