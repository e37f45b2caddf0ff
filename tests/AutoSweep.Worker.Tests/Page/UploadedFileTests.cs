using AutoSweep.Core;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class UploadedFileTests
{
    [Fact]
    public async Task A_text_is_taken_without_its_byte_order_mark()
    {
        var sent = await TakeAsync(new("curve.csv", "\uFEFFoutput,level_mv\n1,2\n"));

        Assert.Equal(("curve.csv", "output,level_mv\n1,2\n"), (sent.Name, sent.Text));
    }

    [Theory]
    [InlineData("../../etc/passwd", "passwd")]
    [InlineData("C:\\fakepath\\mine.csv", "mine.csv")]
    [InlineData("a\u202Evsc.exe\n", "avsc.exe")]
    [InlineData("/", "a file without a name")]
    public async Task Only_the_last_part_of_its_name_is_shown_without_signs_that_dress_it_up(string sent, string shown)
    {
        Assert.Equal(shown, (await TakeAsync(new(sent, "x"))).Name);
    }

    [Fact]
    public async Task The_largest_file_is_taken_and_one_byte_more_is_not()
    {
        Assert.Equal(UploadedFile.MostBytes, (await TakeAsync(new("a", new string('x', (int)UploadedFile.MostBytes)))).Text.Length);
        await RefusedAsync(new("a", new string('x', (int)UploadedFile.MostBytes + 1)), "1048577 bytes");
    }

    [Fact]
    public async Task An_empty_file_and_one_that_is_no_text_are_refused()
    {
        await RefusedAsync(new("a", ""), "0 bytes");
        await RefusedAsync(new FakeBrowserFile("a.png", [0x89, 0x50, 0x4E, 0x47, 0xFF]), "UTF-8");
    }

    private static Task<UploadedFile> TakeAsync(FakeBrowserFile file) => UploadedFile.TakeAsync(file, "a text", CancellationToken.None);

    private static async Task RefusedAsync(FakeBrowserFile file, string found)
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => TakeAsync(file));
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.Equal(BenchFault.BadFile, fault.Kind);
    }
}
