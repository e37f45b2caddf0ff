using AutoSweep.Core;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Page.Jobs;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class ProfileShelfTests : IDisposable
{
    private const string Shipped = "invented-smallbench-14-60hz";

    private readonly TemporaryFolder _data = new();

    private ProfileShelf Shelf => new(_data.File("generators"));

    public void Dispose() => _data.Dispose();

    [Fact]
    public void Every_shipped_profile_and_each_variant_can_be_chosen_practice_generators_last()
    {
        var (choices, passedOver) = Shelf.Read();

        Assert.Empty(passedOver);
        Assert.Equal(GeneratorProfileLibrary.Names.Order(), choices.Select(choice => choice.Key).Where(key => !key.Contains('#')).Order());
        Assert.All(choices.Where(choice => choice.Key.Contains('#')), choice =>
            Assert.Contains("variant", choice.Profile.Name, StringComparison.Ordinal));
        Assert.Equal(choices.Select(choice => choice.Profile.Invented).Order(), choices.Select(choice => choice.Profile.Invented));
    }

    [Fact]
    public void A_file_that_is_sent_is_kept_under_a_name_of_the_programs_own_and_can_be_chosen()
    {
        var own = Shelf.Keep(new("../../elsewhere.json", GeneratorProfileLibrary.TextOf(Shipped)));

        var kept = Assert.Single(Directory.GetFiles(_data.Path, "*", SearchOption.AllDirectories));
        Assert.Equal(_data.File("generators"), Path.GetDirectoryName(kept));
        Assert.Equal(own.Key, Path.GetFileName(kept));
        Assert.Matches("^own-[a-z0-9-]+\\.json$", own.Key);
        Assert.Equal(own.Key, Shelf.Read().Choices[0].Key);
    }

    [Fact]
    public void A_second_profile_of_the_same_name_writes_over_nothing_and_the_same_one_is_kept_once()
    {
        var text = GeneratorProfileLibrary.TextOf(Shipped);
        var first = Shelf.Keep(new("a.json", text));

        Assert.Equal(first.Key, Shelf.Keep(new("b.json", text)).Key);
        Assert.NotEqual(first.Key, Shelf.Keep(new("a.json", text + "\n")).Key);
        Assert.Equal(text, File.ReadAllText(Path.Combine(_data.File("generators"), first.Key)));
    }

    [Fact]
    public void A_file_that_breaks_the_format_is_refused_with_its_field_and_nothing_is_kept()
    {
        var text = GeneratorProfileLibrary.TextOf(Shipped).Replace("\"mainsHertz\"", "\"mainsHerz\"", StringComparison.Ordinal);

        var fault = Assert.Throws<BenchFaultException>(() => Shelf.Keep(new("mine.json", text)));

        Assert.Contains("mine.json", fault.Found, StringComparison.Ordinal);
        Assert.Contains("mainsHerz", fault.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_data.File("generators")));
    }

    [Fact]
    public void An_own_file_that_cannot_be_used_is_named_and_passed_over()
    {
        Directory.CreateDirectory(_data.File("generators"));
        File.WriteAllText(_data.File("generators/broken.json"), "{");

        var (choices, passedOver) = Shelf.Read();

        Assert.Contains("broken.json", Assert.Single(passedOver).Found, StringComparison.Ordinal);
        Assert.All(choices, choice => Assert.False(choice.IsOwn));
    }
}
