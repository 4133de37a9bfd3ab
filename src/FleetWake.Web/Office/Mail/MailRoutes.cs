using FleetWake.Logbook.People;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Mail;

/// <summary>What went out, to whom, with which result; who receives; addresses that take no mail; where alerts are handed to.</summary>
internal static class MailRoutes
{
    public static void MapMailPages(this IEndpointRouteBuilder office)
    {
        office.MapGet("mail", (HttpContext http, MailDesk desk) => desk.ListAsync(http, FormState.None)).NeedsTo(Verb.Read, Matter.Reports);
        office.MapGet("mail/message", (HttpContext http, MailDesk desk) => desk.MessageAsync(http, null)).NeedsTo(Verb.Read, Matter.Reports);
        office.MapPost("mail/message", (HttpContext http, MailDesk desk) => desk.ResendAsync(http)).NeedsTo(Verb.Decide, Matter.Reports);
        office.MapPost("mail/subscribe", (HttpContext http, IFormCollection form, MailDesk desk) => desk.AskAsync(http, form)).NeedsTo(Verb.Decide, Matter.Reports);
        office.MapPost("mail/try-again", (HttpContext http, IFormCollection form, MailDesk desk) => desk.TryAgainAsync(http, form)).NeedsTo(Verb.Decide, Matter.Reports);
        office.MapPost("mail/stop", (HttpContext http, IFormCollection form, MailDesk desk) => desk.StopAsync(http, form)).NeedsTo(Verb.Decide, Matter.Reports);

        // Its secret is a key of a program.
        office.MapGet("mail/hook", (HttpContext http, HookDesk desk) => desk.ShowAsync(http, FormState.None)).NeedsTo(Verb.Read, Matter.Keys);
        office.MapPost("mail/hook", (HttpContext http, IFormCollection form, HookDesk desk) => desk.SetAsync(http, form)).NeedsTo(Verb.Decide, Matter.Keys);
        office.MapPost("mail/hook/secret", (HttpContext http, HookDesk desk) => desk.RenewAsync(http)).NeedsTo(Verb.Decide, Matter.Keys);
        office.MapPost("mail/hook/test", (HttpContext http, HookDesk desk) => desk.TestAsync(http)).NeedsTo(Verb.Decide, Matter.Keys);
        office.MapPost("mail/hook/off", (HttpContext http, HookDesk desk) => desk.EndAsync(http)).NeedsTo(Verb.Decide, Matter.Keys);
    }
}
