namespace AutoSweep.Pages.Tests.Support;

/// <summary>The tests that share one run of the demo.</summary>
[CollectionDefinition(Name)]
public sealed class DemoRecordDefinition : ICollectionFixture<DemoRecord>
{
    public const string Name = "the demo's record";
}
