using AutoSweep.Core;
using AutoSweep.Worker.Page.Record;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class ShopFormTests : IDisposable
{
    private readonly TemporaryFolder _data = new();

    private string File => _data.File("shop.json");

    public void Dispose() => _data.Dispose();

    [Fact]
    public void What_is_typed_is_what_the_strict_reader_reads()
    {
        new ShopForm { Name = " Some \"Bench\" ", Address = "1 Some Lane\r\n\r\n Somewhere ", Technician = "",
            Phone = "0 12", Note = "Two\nlines", Invented = true }.Save(File);

        var shop = ShopSettings.Read(File);
        Assert.Equal(("Some \"Bench\"", null, "0 12", "Two lines", true), (shop.Name, shop.Technician, shop.Phone, shop.Note, shop.Invented));
        Assert.Equal(["1 Some Lane", "Somewhere"], shop.Address);
        Assert.Equal(["shop.json"], Directory.GetFiles(_data.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void What_the_form_has_no_field_for_stays_and_the_earlier_file_is_kept()
    {
        const string Before = """{ "name": "a", "instruments": [{ "identity": "SN-17", "calibrated": "2026-02-03" }] }""";
        System.IO.File.WriteAllText(File, Before);
        var form = ShopForm.Of(ShopSettings.Read(File));
        form.Phone = "1";

        form.Save(File);

        Assert.Equal(new DateOnly(2026, 2, 3), Assert.Single(ShopSettings.Read(File).Instruments).Calibrated);
        Assert.Equal(Before, System.IO.File.ReadAllText(File + ".before"));
    }

    [Fact]
    public void A_shop_without_a_name_is_refused_and_the_file_stays_as_it_was()
    {
        System.IO.File.WriteAllText(File, """{ "name": "a" }""");

        var fault = Assert.Throws<BenchFaultException>(() => new ShopForm { Phone = "1" }.Save(File));

        Assert.StartsWith("the shop's name", fault.Found, StringComparison.Ordinal);
        Assert.Equal("a", ShopSettings.Read(File).Name);
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_replaced_but_not_lost()
    {
        System.IO.File.WriteAllText(File, """{ "nam": "a" }""");

        new ShopForm { Name = "b" }.Save(File);

        Assert.Equal("b", ShopSettings.Read(File).Name);
        Assert.Contains("nam", System.IO.File.ReadAllText(File + ".before"), StringComparison.Ordinal);
    }

    [Fact]
    public void Too_long_an_address_is_refused()
    {
        Assert.Contains("9 lines", Assert.Throws<BenchFaultException>(
            () => new ShopForm { Name = "a", Address = string.Join('\n', Enumerable.Repeat("x", 9)) }.Save(File)).Found, StringComparison.Ordinal);
    }
}
